import type { MoneyRules } from "../../buying/moneyRules.ts";
import { checkPlan } from "../../lay/check/checkPlan.ts";
import type { LayPlan, LayProblem, Stock } from "../../lay/problem/layProblem.ts";
import { BREATH, type Breath } from "../../lay/search/breath.ts";
import type { Material } from "../../materials/material.ts";
import { isBought, stockCopyIds } from "../../materials/stock.ts";
import { boughtIds, onAll, openedIn } from "./openedStocks.ts";
import { compareOutlays, type Outlay, outlayOf } from "./outlay.ts";
import { type QuickSearch, quickPlan } from "./quickPlan.ts";
import { spreadPieces } from "./spreadPieces.ts";

/** One way to buy: the stocks of the shop that are cut into, and what that comes to. */
export interface StockWay {
  /** Bought stocks that the plan uses, in the problem's order. */
  readonly opened: readonly string[];
  readonly plan: LayPlan;
  readonly outlay: Outlay;
}

/** What to open, and what the other ways would cost. */
export interface StockChoice {
  readonly best: StockWay;
  /** Ways that open something else, cheapest first; each a checked plan of all pieces that find a place. */
  readonly others: readonly StockWay[];
}

/** Sets of shop stock that are laid at most. */
const MOST_SETS = 60;

/** Whether there is a choice of what to buy: more than one stock of the shop, or one beside others that are the maker's. */
export function hasStockChoice({ stock }: Material): boolean {
  return stock.filter(isBought).length > 1 || stock.some(({ toBuy }) => toBuy === true);
}

/**
 * What is there is used up first, then as little money is spent as can be: which rolls, panels and skins of the shop to
 * cut into. Sets of them are laid quickly one after the other, with own stock before them; small jobs besides by every
 * way to spread the pieces over the stocks. Every plan is one the checker has passed.
 *
 * Cost: up to 60 quick searches, and for small jobs those of `spreadPieces`.
 */
export function* cheapestPlan(
  material: Material,
  problem: LayProblem,
  rules: MoneyRules,
  search: QuickSearch,
): Generator<Breath, StockChoice, undefined> {
  const ways: StockWay[] = [];
  const take = (plan: LayPlan): void => {
    const faults = checkPlan(problem, plan);
    if (faults.length > 0) throw new Error(`cheapestPlan: the checker refused a plan: ${faults[0]!.code}`);
    const outlay = outlayOf(material, problem, plan, rules);
    ways.push({ opened: openedIn(material, plan), plan, outlay });
  };
  for (const stocks of stockSets(material, problem)) {
    yield BREATH;
    const found: LayPlan = yield* quickPlan({ ...problem, stocks, pinned: problem.pinned }, search);
    take(onAll(problem, found));
  }
  const spread: LayPlan | null = yield* spreadPieces(material, problem, rules, { ...search, evaluations: SMALL });
  if (spread !== null) take(spread);
  ways.sort((a, b) => compareOutlays(a.outlay, b.outlay));
  const seen = new Set<string>();
  const [best, ...others] = ways.filter(({ opened }) => {
    const key = opened.join("\n");
    return !seen.has(key) && seen.add(key);
  });
  return { best: best!, others };
}

/** Evaluations for a few pieces on one stock. */
const SMALL = 3000;

/** Sets of stocks to lay on: own stock always, then panels and limited rolls of the shop, then one or two open rolls. */
function stockSets(material: Material, { stocks, pinned }: LayProblem): Stock[][] {
  const paid = boughtIds(material);
  const isOpen = (stock: Stock): boolean => stock.kind === "roll" && stock.length === null;
  const own = stocks.filter(({ id }) => !paid.has(id));
  const open = stocks.filter(isOpen);
  const closed = stocks.filter((stock) => paid.has(stock.id) && !isOpen(stock));
  const rolls = [
    [],
    ...open.map((roll) => [roll]),
    ...open.flatMap((a) => open.filter((b) => b !== a).map((b) => [a, b])),
  ];
  const held = new Set(pinned.map(({ stockId }) => stockId));
  const sets = shopSets(material, closed).flatMap((some) => rolls.map((few) => [...own, ...some, ...few]));
  return sets
    .filter((set) => set.length > 0 && [...held].every((id) => set.some((stock) => stock.id === id)))
    .slice(0, MOST_SETS);
}

/** Which panels, skins and limited rolls of the shop to take: equal ones by their number, few before many. */
function shopSets(material: Material, closed: readonly Stock[]): Stock[][] {
  let sets: Stock[][] = [[]];
  for (const one of material.stock.filter(isBought)) {
    const ids = stockCopyIds(one);
    const copies = closed.filter(({ id }) => ids.includes(id));
    const before = sets;
    const grown = copies.flatMap((_, i) => before.map((set) => [...set, ...copies.slice(0, i + 1)]));
    sets = [...before, ...grown].slice(0, MOST_SETS);
  }
  return sets;
}

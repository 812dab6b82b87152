import type { MoneyRules } from "../../buying/moneyRules.ts";
import { isRectangle } from "../../geometry/box.ts";
import { polygonArea } from "../../geometry/ring.ts";
import type { LayPlan, LayProblem, Stock, StockUse } from "../../lay/problem/layProblem.ts";
import { type Extent, fitsBox, pieceExtents } from "../../lay/problem/pieceExtent.ts";
import { stockRegion } from "../../lay/problem/stockRegion.ts";
import { BREATH, type Breath } from "../../lay/search/breath.ts";
import type { Material } from "../../materials/material.ts";
import { fewRectangles } from "./fewRectangles.ts";
import { compareOutlays, type Outlay, outlayOfUses } from "./outlay.ts";
import { type QuickSearch, quickPlan } from "./quickPlan.ts";

/** More ways than this to spread pieces over stocks are not gone through. */
const MOST_WAYS = 20_000;

/** How many copies of each piece lie on a stock, in the problem's order. */
type Load = readonly number[];

/** Every way to spread the copies over the stocks: a load for each stock. */
type Ways = readonly (readonly Load[])[];

/**
 * The cheapest plan over several stocks by going through every way to spread the pieces over them, those first that may
 * cost least; a way is laid only while its lower bound beats the best. As good as the search on single stocks is: with
 * a few rectangles on each that is the best there is. Null where there are too many ways, where pieces are pinned,
 * matched or laid in layers, or where not everything finds a place.
 *
 * Cost: at most 20,000 ways, and one quick search for each load that is looked at.
 */
export function* spreadPieces(
  material: Material,
  problem: LayProblem,
  rules: MoneyRules,
  search: QuickSearch,
): Generator<Breath, LayPlan | null, undefined> {
  const { pieces, stocks } = problem;
  if (problem.pinned.length > 0 || problem.spread !== undefined || problem.pattern !== undefined) return null;
  const ways = waysToSpread(
    pieces.map(({ count }) => count),
    stocks.length,
  );
  if (ways === null) return null;
  const shelf = stocks.map((stock) => new StockLoads(stock, problem, material, rules));
  const ranked = ways
    .map((loads) => ({ loads, least: summed(loads.map((load, i) => shelf[i]!.least(load))) }))
    .filter(({ least }) => least !== null)
    .sort((a, b) => compareOutlays(a.least!, b.least!));
  yield BREATH;
  let best: { readonly outlay: Outlay; readonly plans: readonly (LayPlan | null)[] } | null = null;
  for (const { loads, least } of ranked) {
    if (best !== null && compareOutlays(least!, best.outlay) >= 0) break;
    const plans: (LayPlan | null)[] = [];
    for (const [i, load] of loads.entries()) {
      const plan: LayPlan | null | undefined = yield* shelf[i]!.laid(load, search);
      // What has no place on this stock has none however the rest lies.
      if (plan === undefined) break;
      plans.push(plan);
    }
    if (plans.length < loads.length) continue;
    const uses = plans.flatMap((plan) => plan?.uses ?? []);
    const outlay: Outlay = { leftOut: 0, ...outlayOfUses(material, uses, rules) };
    if (best === null || compareOutlays(outlay, best.outlay) < 0) best = { outlay, plans };
  }
  return best === null ? null : joined(problem, best.plans, search.seed);
}

/** Every way to spread counts over so many stocks; null when there are too many. */
function waysToSpread(counts: readonly number[], stocks: number): Ways | null {
  let ways: Ways = [Array.from({ length: stocks }, () => [])];
  for (const count of counts) {
    const parts = compositions(count, stocks);
    if (ways.length * parts.length > MOST_WAYS) return null;
    ways = ways.flatMap((loads) => parts.map((part) => loads.map((load, i) => [...load, part[i]!])));
  }
  return ways;
}

/** A number as a sum of so many others, every way. */
function compositions(count: number, parts: number): number[][] {
  if (parts === 1) return [[count]];
  return Array.from({ length: count + 1 }, (_, first) =>
    compositions(count - first, parts - 1).map((rest) => [first, ...rest]),
  ).flat();
}

function summed(outlays: readonly (Omit<Outlay, "leftOut"> | null)[]): Outlay | null {
  let sum: Outlay = { leftOut: 0, toPay: 0, bought: 0, own: 0 };
  for (const one of outlays) {
    if (one === null) return null;
    sum = { leftOut: 0, toPay: sum.toPay + one.toPay, bought: sum.bought + one.bought, own: sum.own + one.own };
  }
  return sum;
}

/** What loads of one stock cost at least, and their plans, each looked for once. */
class StockLoads {
  readonly #extents: readonly (readonly Extent[])[];
  readonly #areas: readonly number[];
  readonly #room: number;
  readonly #plans = new Map<string, LayPlan | undefined>();
  readonly #least = new Map<string, Omit<Outlay, "leftOut"> | null>();

  readonly stock: Stock;
  readonly problem: LayProblem;
  readonly material: Material;
  readonly rules: MoneyRules;

  constructor(stock: Stock, problem: LayProblem, material: Material, rules: MoneyRules) {
    this.stock = stock;
    this.problem = problem;
    this.material = material;
    this.rules = rules;
    this.#extents = problem.pieces.map((piece) => pieceExtents(piece));
    this.#areas = problem.pieces.map(({ outline }) => polygonArea(outline));
    const { width, length } = stockRegion(stock).region;
    this.#room =
      stock.kind === "remnant" ? polygonArea(stock.outline) : length === null ? Infinity : width * length;
  }

  /** No plan of a load comes to less; null when it cannot lie here. */
  least(load: Load): Omit<Outlay, "leftOut"> | null {
    const key = load.join();
    const known = this.#least.get(key);
    if (known !== undefined) return known;
    const length = this.#leastLength(load);
    const outlay = length === null ? null : outlayOfUses(this.material, [this.#use(length)], this.rules);
    this.#least.set(key, outlay);
    return outlay;
  }

  #use(usedLength: number): StockUse {
    return { stockId: this.stock.id, usedLength, bound: null };
  }

  #leastLength(load: Load): number | null {
    const { stock, problem } = this;
    const { width, length } = stockRegion(stock).region;
    let [area, longest] = [0, 0];
    for (const [i, count] of load.entries()) {
      if (count === 0) continue;
      if (!fitsBox(this.#extents[i]!, stock, problem.margin)) return null;
      area += count * this.#areas[i]!;
      const along = this.#extents[i]!.filter(({ across }) => across <= width * (1 + 1e-9)).map((one) => one.along);
      longest = Math.max(longest, Math.min(...along));
    }
    if (area > this.#room * (1 + 1e-9)) return null;
    if (area === 0) return 0;
    // A leftover counts whole as soon as something lies on it.
    return stock.kind === "remnant" ? length! : Math.max(longest, area / width);
  }

  /** The plan of a load; null for an empty one, undefined where it has no place. */
  *laid(load: Load, search: QuickSearch): Generator<Breath, LayPlan | null | undefined, undefined> {
    if (load.every((count) => count === 0)) return null;
    const key = load.join();
    if (this.#plans.has(key)) return this.#plans.get(key);
    const pieces = this.problem.pieces.flatMap((piece, i) => (load[i]! > 0 ? [{ ...piece, count: load[i]! }] : []));
    const { stock, x, y } = asRoll(this.stock);
    const alone = { ...this.problem, pieces, stocks: [stock] };
    yield BREATH;
    const exact = stock.kind === "roll" ? fewRectangles(alone, stock, this.stock.kind !== "roll") : undefined;
    if (exact === null) {
      this.#plans.set(key, undefined);
      return undefined;
    }
    const plan: LayPlan = exact ?? (yield* quickPlan(alone, search));
    const placements = plan.placements.map((placement) => ({
      ...placement,
      x: placement.x + x,
      y: placement.y + y,
    }));
    const whole = plan.unplaced.length > 0 ? undefined : { ...plan, placements };
    this.#plans.set(key, whole);
    return whole;
  }
}

/** A rectangle of cloth as the end of a roll, which the searches for rectangles know; and where it lies. */
function asRoll(stock: Stock): { readonly stock: Stock; readonly x: number; readonly y: number } {
  if (stock.kind === "roll" || stock.outline.holes.length > 0 || !isRectangle(stock.outline.outer))
    return { stock, x: 0, y: 0 };
  const { region, originX: x, originY: y } = stockRegion(stock);
  const { width, length, flaws } = region;
  return { stock: { kind: "roll", id: stock.id, width, length, flaws }, x, y };
}

/** The plans of single stocks as one; copies are numbered through. */
function joined(problem: LayProblem, plans: readonly (LayPlan | null)[], seed: number): LayPlan {
  const next = new Map<string, number>();
  const isAlone = plans.filter((plan) => plan !== null).length === 1;
  const placements = plans.flatMap((plan) => {
    const first = new Map(next);
    return (plan?.placements ?? []).map((placement) => {
      const copy = (first.get(placement.pieceId) ?? 0) + placement.copy;
      next.set(placement.pieceId, Math.max(next.get(placement.pieceId) ?? 0, copy + 1));
      return { ...placement, copy };
    });
  });
  const uses = problem.stocks.map((stock, i): StockUse => {
    const use = plans[i]?.uses[0];
    return { stockId: stock.id, usedLength: use?.usedLength ?? 0, bound: isAlone ? (use?.bound ?? null) : null };
  });
  const evaluations = plans.reduce((sum, plan) => sum + (plan?.evaluations ?? 0), 0);
  return { materialId: problem.materialId, placements, unplaced: [], uses, evaluations, seed };
}

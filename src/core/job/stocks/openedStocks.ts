import type { MoneyRules } from "../../buying/moneyRules.ts";
import type { LayPlan, LayProblem } from "../../lay/problem/layProblem.ts";
import { copiesLeftOut } from "../../lay/problem/planSums.ts";
import { isBetterPlan } from "../../lay/search/comparePlans.ts";
import type { Material } from "../../materials/material.ts";
import { isBought, stockCopyIds } from "../../materials/stock.ts";
import { compareOutlays, type Outlay, outlayOf } from "./outlay.ts";

/** Ids in the lay of stock that has to be paid for. */
export function boughtIds({ stock }: Material): ReadonlySet<string> {
  return new Set(stock.filter(isBought).flatMap(stockCopyIds));
}

/** The problem with own stock and, of the shop's, only what is opened; pieces put down by hand keep their stock. */
export function withOpened(material: Material, problem: LayProblem, opened: readonly string[]): LayProblem {
  const paid = boughtIds(material);
  const held = new Set([...opened, ...problem.pinned.map(({ stockId }) => stockId)]);
  return { ...problem, stocks: problem.stocks.filter(({ id }) => !paid.has(id) || held.has(id)) };
}

/** What a plan buys of: what of the shop's stock it uses. */
export function openedIn(material: Material, plan: LayPlan): string[] {
  const paid = boughtIds(material);
  return plan.uses
    .filter(({ stockId, usedLength }) => usedLength > 0 && paid.has(stockId))
    .map(({ stockId }) => stockId);
}

/** A way to buy that was not taken: what it opens, what it costs in smallest coins, and how many copies it leaves out. */
export interface OtherWay {
  readonly opened: readonly string[];
  readonly toPay: number | null;
  readonly leftOut: number;
}

/** Other ways that are told. */
const TOLD = 6;

/** The cheapest way for each other choice of rolls and kinds of panels; how many of a kind makes no other choice. */
export function otherKinds(
  material: Material,
  best: readonly string[],
  others: readonly { readonly opened: readonly string[]; readonly plan: LayPlan; readonly outlay: Outlay }[],
): OtherWay[] {
  const kinds = (opened: readonly string[]): string =>
    JSON.stringify(material.stock.map((one) => stockCopyIds(one).some((id) => opened.includes(id))));
  const seen = new Set([kinds(best)]);
  return others
    .filter(({ opened }) => !seen.has(kinds(opened)) && seen.add(kinds(opened)))
    .slice(0, TOLD)
    .map(({ opened, plan, outlay }) => ({
      opened,
      toPay: Number.isFinite(outlay.toPay) ? outlay.toPay : null,
      leftOut: copiesLeftOut(plan),
    }));
}

/** A plan on some of the stocks as one on all of them. */
export function onAll({ stocks }: LayProblem, plan: LayPlan): LayPlan {
  const uses = new Map(plan.uses.map((use) => [use.stockId, use]));
  const isAlone = plan.uses.filter(({ usedLength }) => usedLength > 0).length === 1;
  return {
    ...plan,
    uses: stocks.map(({ id }) => {
      const use = uses.get(id) ?? { stockId: id, usedLength: 0, bound: null };
      // A bound holds for what lies on one stock, not for the choice between them.
      return isAlone ? use : { ...use, bound: null };
    }),
  };
}

/** Whether a plan costs less, or the same and is the better one. Any plan is better than none. */
export function isCheaperPlan(
  material: Material,
  problem: LayProblem,
  rules: MoneyRules,
  candidate: LayPlan,
  best: LayPlan | null,
): boolean {
  if (best === null) return true;
  const outlays = [candidate, best].map((plan) => outlayOf(material, problem, plan, rules));
  const difference = compareOutlays(outlays[0]!, outlays[1]!);
  return difference < 0 || (difference === 0 && isBetterPlan(problem, candidate, best));
}

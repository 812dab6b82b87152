import type { MoneyRules } from "../../buying/moneyRules.ts";
import { purchaseOf } from "../../buying/purchase.ts";
import type { LayPlan, LayProblem } from "../../lay/problem/layProblem.ts";
import { areaLeftOut } from "../../lay/search/comparePlans.ts";
import type { Material } from "../../materials/material.ts";

/** What a plan over several stocks comes to, weighed in this order; less is better. */
export interface Outlay {
  /** Area of the pieces left out, mm². */
  readonly leftOut: number;
  /** To be paid, in the smallest coin; Infinity where something bought has no price. */
  readonly toPay: number;
  /** Area of what is bought, mm². */
  readonly bought: number;
  /** Area of own stock that is cut into, mm²: less of it leaves more on the shelf. */
  readonly own: number;
}

/** Areas that differ by less are the same, mm². */
const SAME = 1e-3;

/** What stocks used so far come to. */
export function outlayOfUses(
  material: Material,
  uses: LayPlan["uses"],
  rules: MoneyRules,
): Omit<Outlay, "leftOut"> {
  const plan: LayPlan = { materialId: material.id, placements: [], unplaced: [], uses, evaluations: 0, seed: 0 };
  const { bills, toPay } = purchaseOf(material, plan, rules);
  const area = (source: "buy" | "own"): number =>
    bills.reduce((sum, bill) => (bill.source === source ? sum + bill.area : sum), 0);
  return { toPay: toPay ?? Infinity, bought: area("buy"), own: area("own") };
}

/** What a plan comes to. */
export function outlayOf(material: Material, problem: LayProblem, plan: LayPlan, rules: MoneyRules): Outlay {
  return { leftOut: areaLeftOut(problem, plan), ...outlayOfUses(material, plan.uses, rules) };
}

/** Below 0 where the first is the better one: everything laid, then least money, then least bought, then least cut into. */
export function compareOutlays(a: Outlay, b: Outlay): number {
  if (Math.abs(a.leftOut - b.leftOut) > SAME) return a.leftOut - b.leftOut;
  if (a.toPay !== b.toPay) return a.toPay < b.toPay ? -1 : 1;
  if (Math.abs(a.bought - b.bought) > SAME) return a.bought - b.bought;
  return Math.abs(a.own - b.own) > SAME ? a.own - b.own : 0;
}

import type { LayPlan, LayProblem } from "../problem/layProblem.ts";

/** Cloth a plan takes off rolls, mm: what a maker would rather keep or not buy. Leftovers are there anyway. */
export function clothUsed(problem: LayProblem, plan: LayPlan): number {
  const rolls = new Set(problem.stocks.filter(({ kind }) => kind === "roll").map(({ id }) => id));
  return plan.uses.reduce((sum, { stockId, usedLength }) => sum + (rolls.has(stockId) ? usedLength : 0), 0);
}

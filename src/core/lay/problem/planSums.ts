import type { LayPiece, LayPlan, LayProblem } from "./layProblem.ts";

/** Copies of all pieces together. */
export function copiesOf(pieces: readonly Pick<LayPiece, "count">[]): number {
  return pieces.reduce((sum, { count }) => sum + count, 0);
}

/** Copies that a plan leaves out, of one piece or of all. */
export function copiesLeftOut({ unplaced }: Pick<LayPlan, "unplaced">, pieceId?: string): number {
  return copiesOf(pieceId === undefined ? unplaced : unplaced.filter((left) => left.pieceId === pieceId));
}

/** Cloth used of all stocks together, mm. */
export function lengthUsed({ uses }: Pick<LayPlan, "uses">): number {
  return uses.reduce((sum, { usedLength }) => sum + usedLength, 0);
}

/** Cloth a plan takes off rolls, mm: what a maker would rather keep or not buy. Leftovers are there anyway. */
export function clothUsed(problem: LayProblem, plan: LayPlan): number {
  const rolls = new Set(problem.stocks.filter(({ kind }) => kind === "roll").map(({ id }) => id));
  return plan.uses.reduce((sum, { stockId, usedLength }) => sum + (rolls.has(stockId) ? usedLength : 0), 0);
}

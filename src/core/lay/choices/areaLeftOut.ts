import { areaLeft } from "../comparePlans.ts";
import type { LayPlan, LayProblem } from "../types.ts";

/** Area of the pieces that a plan leaves out, mm². */
export function areaLeftOut(problem: LayProblem, { unplaced }: LayPlan): number {
  const left = problem.pieces.map(({ id }) =>
    unplaced.reduce((sum, { pieceId, count }) => sum + (pieceId === id ? count : 0), 0),
  );
  return areaLeft(problem.pieces, left);
}

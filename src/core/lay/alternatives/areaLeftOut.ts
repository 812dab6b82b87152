import type { LayPlan, LayProblem } from "../problem/layProblem.ts";
import { areaLeft } from "../search/comparePlans.ts";

/** Area of the pieces that a plan leaves out, mm². */
export function areaLeftOut(problem: LayProblem, { unplaced }: LayPlan): number {
  const left = problem.pieces.map(({ id }) =>
    unplaced.reduce((sum, { pieceId, count }) => sum + (pieceId === id ? count : 0), 0),
  );
  return areaLeft(problem.pieces, left);
}

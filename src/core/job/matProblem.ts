import { polygonArea, rectangleRing, solid } from "../geometry/ring.ts";
import type { LayProblem, Stock } from "../lay/problem/layProblem.ts";
import { copiesOf } from "../lay/problem/planSums.ts";

/** A cutting machine's mat. Lengths in mm. */
export interface Mat {
  readonly width: number;
  readonly height: number;
  /** Edge that is gripped or out of reach, on every side. */
  readonly grip: number;
  /** Least distance between two pieces that the tool needs: the kerf, or how far a knife runs on past corners. */
  readonly apart: number;
}

/**
 * The same pieces to be laid on mats instead of the cloth as it is: a mat is stock like any leftover, the cloth's
 * length along its width. Cloth narrower than the mat leaves the rest of it bare. More mats than are needed are
 * offered; pieces that no mat takes come back as left out.
 */
export function matProblem(problem: LayProblem, mat: Mat): LayProblem {
  const width = mat.width - 2 * mat.grip;
  const rolls = problem.stocks.filter((stock) => stock.kind === "roll");
  const clothWidth = rolls.length === 0 ? Infinity : Math.max(...rolls.map((roll) => roll.width));
  const height = Math.min(mat.height - 2 * mat.grip, clothWidth);
  if (!(width > 0 && height > 0)) {
    throw new RangeError(`matProblem: a mat larger than its gripped edges expected, got ${width} × ${height}`);
  }
  const copies = copiesOf(problem.pieces);
  const area = problem.pieces.reduce((sum, piece) => sum + piece.count * polygonArea(piece.outline), 0);
  const mats = Math.min(copies, Math.ceil((2 * area) / (width * height)) + 2);
  const stocks = Array.from(
    { length: mats },
    (_, i): Stock => ({
      kind: "remnant",
      id: `mat ${i + 1}`,
      outline: solid(rectangleRing(0, 0, width, height)),
      flaws: [],
    }),
  );
  // What is put on mats has been cut off the roll: each bag's parts are its maker's to keep together.
  const { shade: _, ...rest } = problem;
  return { ...rest, stocks, gap: Math.max(problem.gap, mat.apart), margin: 0, pinned: [] };
}

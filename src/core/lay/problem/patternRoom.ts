import { ringBox } from "../../geometry/box.ts";
import { poseRing } from "../../geometry/pose.ts";
import { latticeOf } from "./lattice.ts";
import type { LayPiece, LayProblem, RollStock } from "./layProblem.ts";

/** What ends a rounding beyond a line, or beyond the edge of a roll, still lies on it, as a share of a width. */
const SAME = 1e-9;

/**
 * Least usable width, mm, margins included, at which a line of a roll's pattern leaves room for a piece between the
 * edges; null where the piece may lie at any height: it is not held across, or its group may lie on any line.
 */
export function widthOnPattern(
  piece: LayPiece,
  { firstLine, folded }: RollStock,
  { pattern, phases, margin }: Pick<LayProblem, "pattern" | "phases" | "margin">,
): number | null {
  // Halves lie on the fold, not between the edges.
  if (pattern === undefined || piece.gives?.onFold === true) return null;
  const [firstAlong, firstAcross] = firstLine ?? [pattern.firstAlong, pattern.firstAcross];
  const low = folded === true ? 0 : margin;
  let least: number | null = null;
  for (const orientation of piece.orientations) {
    const rungs = latticeOf(piece, orientation, { ...pattern, firstAlong, firstAcross }, phases)?.y ?? null;
    if (rungs === null) return null;
    const { minY, maxY } = ringBox(poseRing(piece.outline.outer, { ...orientation, x: 0, y: 0 }));
    const lines = Math.ceil((low - minY - rungs.offset) / rungs.period - SAME);
    const needed = rungs.offset + lines * rungs.period + maxY + margin;
    least = least === null ? needed : Math.min(least, needed);
  }
  return least;
}

/** Whether a roll is wide enough for a piece that needs so much. */
export function isWideEnough({ width }: RollStock, needed: number | null): boolean {
  return needed === null || needed <= width * (1 + SAME);
}

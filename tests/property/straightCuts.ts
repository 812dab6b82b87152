import { ringBox } from "../../src/core/geometry/box.ts";
import { poseRing } from "../../src/core/geometry/pose.ts";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import type { CutBox } from "../../src/core/lay/boxes/cuts/cutTree.ts";
import type { LayPiece } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionPlan } from "../../src/core/lay/problem/region.ts";

/** As drawn and turned by a quarter. */
export const QUARTER_TURNS: LayPiece["orientations"] = [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false }));

/** Rectangular pieces `p0`, `p1` …; those that may turn lie either way. */
export function rectanglePieces(
  sizes: readonly { along: number; across: number; count: number; both: boolean }[],
): LayPiece[] {
  return sizes.map(({ along, across, count, both }, i) => ({
    id: `p${i}`,
    outline: solid(rectangleRing(0, 0, along, across)),
    count,
    orientations: both ? QUARTER_TURNS : QUARTER_TURNS.slice(0, 1),
    freeTurn: false,
  }));
}

/** Boxes of the placed pieces, in the order of the placements. */
export function placedBoxes(pieces: readonly LayPiece[], placements: RegionPlan["placements"]): CutBox[] {
  const outlines = new Map(pieces.map(({ id, outline }) => [id, outline.outer]));
  return placements.map((placement) => {
    const { minX, minY, maxX, maxY } = ringBox(poseRing(outlines.get(placement.pieceId)!, placement));
    return { x: minX, y: minY, dx: maxX - minX, dy: maxY - minY };
  });
}

/** Recursive edge-to-edge test that knows nothing of cut trees: tries every line, both directions. */
export function canBeCut(boxes: readonly CutBox[]): boolean {
  if (boxes.length <= 1) return true;
  for (const [near, size] of [
    ["x", "dx"],
    ["y", "dy"],
  ] as const) {
    for (const { [near]: from, [size]: extent } of boxes) {
      const line = from + extent;
      const before = boxes.filter((box) => box[near] + box[size] <= line + 1e-6);
      const after = boxes.filter((box) => box[near] >= line - 1e-6);
      if (after.length > 0 && before.length > 0 && before.length + after.length === boxes.length)
        return canBeCut(before) && canBeCut(after);
    }
  }
  return false;
}

import { poseRing } from "../../geometry/pose.ts";
import { ringBox } from "../../geometry/ring.ts";
import type { Placement, RegionPlan } from "../types.ts";
import type { PlacedRectangle, RectangleJob } from "./rectangleJob.ts";

/**
 * The plan in mm: hands the copies of each size out in order, pinned pieces as they lie. `placed` may hold at
 * most as many of a size as there are copies. O(pieces).
 */
export function regionPlanOf(prepared: RectangleJob, placed: readonly PlacedRectangle[]): RegionPlan {
  const { job, unit, sizes } = prepared;
  const next = new Int32Array(sizes.length);
  const left = job.pieces.map((piece) => piece.count);
  const placements: Placement[] = [];
  for (const pinned of job.pinned) {
    placements.push(pinned);
    left[job.pieces.findIndex((piece) => piece.id === pinned.pieceId)]!--;
  }
  for (const rectangle of placed) {
    const { piece, copy, orientations } = sizes[rectangle.size]!.copies[next[rectangle.size]!++]!;
    const { id, outline } = job.pieces[piece]!;
    const orientation = orientations[rectangle.way]!;
    const box = ringBox(poseRing(outline.outer, { ...orientation, x: 0, y: 0 }));
    placements.push({
      pieceId: id,
      copy,
      turnDeg: orientation.turnDeg,
      mirrored: orientation.mirrored,
      x: prepared.originX + rectangle.along * unit - box.minX,
      y: prepared.originY + rectangle.across * unit - box.minY,
    });
    left[piece]!--;
  }
  return { placements, left, length: planLength(prepared, placements) };
}

/** Far side of the furthest piece plus the margin, mm. */
function planLength(prepared: RectangleJob, placements: readonly Placement[]): number {
  const outlines = new Map(prepared.job.pieces.map((piece) => [piece.id, piece.outline.outer]));
  let end = 0;
  for (const placement of placements) {
    end = Math.max(end, ringBox(poseRing(outlines.get(placement.pieceId)!, placement)).maxX);
  }
  return placements.length === 0 ? 0 : end + prepared.job.margin;
}

/** Length in mm of a plan whose furthest rectangle ends at `end` units (the gap behind it is not used). */
export function lengthOfEnd(prepared: RectangleJob, end: number): number {
  if (end <= 0) return 0;
  return prepared.originX + end * prepared.unit - prepared.job.gap + prepared.job.margin;
}

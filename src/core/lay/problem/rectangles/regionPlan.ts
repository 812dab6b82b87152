import { type Box, ringBox } from "../../../geometry/box.ts";
import { poseRing } from "../../../geometry/pose.ts";
import type { LayPiece, Placement } from "../layProblem.ts";
import type { RegionPlan } from "../region.ts";
import { mayLieAslant } from "./prepare.ts";
import type { PlacedRectangle, RectangleJob } from "./rectangleJob.ts";
import type { SearchTables } from "./searchTables.ts";

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
  let end = placements.reduce((far, pinned) => Math.max(far, farSide(prepared, pinned)), 0);
  // Thousands of pieces are few kinds in few turns.
  const boxes = new Map<LayPiece, Box[]>();
  for (const rectangle of placed) {
    const { piece, copy, orientations } = sizes[rectangle.size]!.copies[next[rectangle.size]!++]!;
    const { id, outline } = job.pieces[piece]!;
    const orientation = orientations[rectangle.way]!;
    let turned = boxes.get(job.pieces[piece]!);
    if (turned === undefined) {
      turned = orientations.map((one) => ringBox(poseRing(outline.outer, { ...one, x: 0, y: 0 })));
      boxes.set(job.pieces[piece]!, turned);
    }
    const box = turned[rectangle.way]!;
    end = Math.max(end, prepared.originX + rectangle.along * unit + box.maxX - box.minX);
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
  return { placements, left, length: placements.length === 0 ? 0 : end + job.margin };
}

/** Where a pinned piece ends, mm. */
function farSide(prepared: RectangleJob, placement: Placement): number {
  const piece = prepared.job.pieces.find(({ id }) => id === placement.pieceId)!;
  return ringBox(poseRing(piece.outline.outer, placement)).maxX;
}

/** Length in mm of a plan whose furthest rectangle ends at `end` units (the gap behind it is not used). */
function lengthOfEnd(prepared: RectangleJob, end: number): number {
  if (end <= 0) return 0;
  return prepared.originX + end * prepared.unit - prepared.job.gap + prepared.job.margin;
}

/**
 * What a bound on the end in units proves of the length in mm. Null when a piece may lie aslant: the bound is one of
 * plans square to the roll. With a cutting gap it speaks of plans whose pieces are that far apart along or across.
 *
 * Pieces rounded up to a grid may rule out lengths that the true sizes allow, so then only the area counts, less what
 * rounding added.
 */
export function provenLength(prepared: RectangleJob, tables: SearchTables, bound: number): number | null {
  if (mayLieAslant(prepared.job)) return null;
  if (prepared.exact) return lengthOfEnd(prepared, bound);
  const least = Math.min(...tables.sizeLeastAcross, ...tables.sizeLeastAlong);
  const end = (tables.area / (tables.width + 1)) * Math.max(0, 1 - 4 / least);
  return Math.max(0, lengthOfEnd(prepared, end));
}

import { type Box, isRectangle, ringBox } from "../../../geometry/box.ts";
import { type Orientation, poseRing } from "../../../geometry/pose.ts";
import type { Ring } from "../../../geometry/ring.ts";
import { isLoose, type LayPiece } from "../layProblem.ts";
import type { RegionJob } from "../region.ts";
import { type CommonUnit, commonUnit, unitsCovering, unitsInside } from "./commonUnit.ts";
import type { Blocked, RectangleJob, SizeCopy, Way } from "./rectangleJob.ts";

const RECTANGLE_TOLERANCE = 1e-6;
/** Furthest end in units: sums of two ends stay below 2³¹. */
const MOST_END = 1 << 29;

/** Whether the job can be searched on whole numbers: rectangles that may lie square on a rectangular region. */
export function isRectangleJob(job: RegionJob): boolean {
  const { outline } = job.region;
  if (outline !== null && (outline.holes.length > 0 || !isRectangle(outline.outer, RECTANGLE_TOLERANCE)))
    return false;
  return job.pieces.every(
    (piece) => isRectangle(piece.outline.outer, RECTANGLE_TOLERANCE) && squareOrientations(piece).length > 0,
  );
}

/** Whether a piece may lie aslant to the roll, so that no plan square to it can be proven shortest. */
export function mayLieAslant(job: RegionJob): boolean {
  return job.pieces.some((piece) => isLoose(piece) || piece.orientations.some(({ turnDeg }) => turnDeg % 90 !== 0));
}

/** The job on whole numbers; see `RectangleJob`. Throws RangeError unless `isRectangleJob`. O(pieces · turns). */
export function rectangleJobOf(job: RegionJob): RectangleJob {
  if (!isRectangleJob(job)) throw new RangeError("rectangleJobOf: expected rectangles on a rectangular region");
  const box = usableBox(job);
  const unit = unitOf(job);
  const inside = (mm: number): number => Math.max(0, unitsInside(mm + job.gap, unit.mm));
  const width = inside(box.maxY - box.minY);
  const length = box.maxX === Infinity ? null : inside(box.maxX - box.minX);
  const room = { width, length: length ?? Infinity, box };
  const { sizes, impossible } = sizesOf(job, unit, room);
  const pinned = pinnedRings(job).map((ring) => blockedBox(ring, job.gap, box, unit.mm));
  const flaws = job.region.flaws.map((flaw) => blockedBox(flaw.outer, job.gap, box, unit.mm));
  return {
    job,
    unit: unit.mm,
    exact: unit.exact,
    width,
    length,
    originX: box.minX,
    originY: box.minY,
    sizes,
    blocked: [...flaws, ...pinned].filter((b) => b.toAlong > 0 && b.toAcross > 0 && b.fromAcross < width),
    pinnedEnd: pinned.reduce((end, b) => Math.max(end, b.toAlong), 0),
    impossible,
  };
}

function pinnedRings(job: RegionJob): Ring[] {
  return job.pinned.map((placement) => {
    const piece = job.pieces.find((candidate) => candidate.id === placement.pieceId);
    if (piece === undefined)
      throw new RangeError(`rectangleJobOf: pinned piece ${placement.pieceId} is not in the job`);
    return poseRing(piece.outline.outer, placement);
  });
}

/** Turns by quarters that the piece may take; a piece free to turn may take them all. */
function squareOrientations(piece: LayPiece): Orientation[] {
  const square = piece.orientations.filter((orientation) => orientation.turnDeg % 90 === 0);
  if (piece.freeTurn) square.push({ turnDeg: 0, mirrored: false }, { turnDeg: 90, mirrored: false });
  return square;
}

function usableBox(job: RegionJob): Box {
  const { region, margin } = job;
  const box =
    region.outline === null
      ? {
          minX: 0,
          minY: 0,
          maxX: region.length ?? Infinity,
          maxY: region.width,
        }
      : ringBox(region.outline.outer);
  return {
    minX: Math.max(0, box.minX) + margin,
    minY: Math.max(0, box.minY) + margin,
    maxX: Math.min(box.maxX, region.length ?? Infinity) - margin,
    maxY: Math.min(box.maxY, region.width) - margin,
  };
}

function unitOf(job: RegionJob): CommonUnit {
  const lengths: number[] = [];
  for (const { outline } of job.pieces) {
    const box = ringBox(outline.outer);
    lengths.push(box.maxX - box.minX + job.gap, box.maxY - box.minY + job.gap);
  }
  const unit = commonUnit(lengths);
  // Flaws and pinned pieces lie anywhere: a finer grid wastes less beside them.
  const finest = job.region.flaws.length + job.pinned.length > 0 ? 0.5 : Infinity;
  const parts = Math.max(1, Math.ceil(unit.mm / finest));
  const least = reachOf(job) / MOST_END;
  return unit.mm / parts < least ? { mm: least, exact: false } : { mm: unit.mm / parts, exact: unit.exact };
}

/** No plan of any search ends beyond this, mm: everything behind everything else, or the far side of closed cloth. */
function reachOf(job: RegionJob): number {
  const longest = job.pieces.map(({ outline, count }) => {
    const box = ringBox(outline.outer);
    return count * (Math.max(box.maxX - box.minX, box.maxY - box.minY) + job.gap);
  });
  const ends = [...job.region.flaws.map(({ outer }) => outer), ...pinnedRings(job)].map((ring) => {
    const box = ringBox(ring);
    return Math.max(box.maxX, box.maxY) + job.gap;
  });
  const pieces = longest.reduce((sum, length) => sum + length, 0);
  return pieces + Math.max(job.region.width, job.region.length ?? 0, ...ends);
}

function blockedBox(ring: Ring, gap: number, usable: Box, unit: number): Blocked {
  const box = ringBox(ring);
  return {
    fromAlong: Math.max(0, unitsInside(box.minX - usable.minX, unit)),
    toAlong: unitsCovering(box.maxX - usable.minX + gap, unit),
    fromAcross: Math.max(0, unitsInside(box.minY - usable.minY, unit)),
    toAcross: unitsCovering(box.maxY - usable.minY + gap, unit),
  };
}

/** Room for the boxes with their gaps, in units, and the box of cloth that it is, mm. */
interface Room {
  readonly width: number;
  readonly length: number;
  readonly box: Box;
}

function sizesOf(job: RegionJob, unit: CommonUnit, room: Room): Pick<RectangleJob, "sizes" | "impossible"> {
  const found = new Map<string, { ways: readonly Way[]; copies: SizeCopy[] }>();
  const impossible = new Array<number>(job.pieces.length).fill(0);
  job.pieces.forEach((piece, index) => {
    const { ways, orientations } = waysOf(piece, job.gap, unit.mm, room);
    const pinned = new Set(job.pinned.filter((p) => p.pieceId === piece.id).map((p) => p.copy));
    const key = ways.map((way) => `${way.across}x${way.along}`).join("|");
    let size = found.get(key);
    if (size === undefined && ways.length > 0) {
      size = { ways, copies: [] };
      found.set(key, size);
    }
    for (let copy = 0; copy < piece.count; copy++) {
      if (pinned.has(copy)) continue;
      if (size === undefined) impossible[index]!++;
      else size.copies.push({ piece: index, copy, orientations });
    }
  });
  return {
    sizes: [...found.values()].filter((size) => size.copies.length > 0),
    impossible,
  };
}

/** Distinct ways that fit the region, the one longer along the roll first, with a turn that gives each. */
function waysOf(
  piece: LayPiece,
  gap: number,
  unit: number,
  { width, length, box: usable }: Room,
): { ways: Way[]; orientations: Orientation[] } {
  const found: { way: Way; orientation: Orientation }[] = [];
  for (const orientation of squareOrientations(piece)) {
    const box = ringBox(poseRing(piece.outline.outer, { ...orientation, x: 0, y: 0 }));
    const [dx, dy] = [box.maxX - box.minX, box.maxY - box.minY];
    const slack = 1e-6 * unit + 1e-9;
    if (dy > usable.maxY - usable.minY + slack || dx > usable.maxX - usable.minX + slack) continue;
    // What is exactly as wide as the cloth has nothing beside it, so rounding up past the cloth's units may be left.
    const across = Math.min(width, unitsCovering(dy + gap, unit));
    const along = Math.min(length, unitsCovering(dx + gap, unit));
    if (found.some(({ way }) => way.across === across && way.along === along)) continue;
    found.push({ way: { across, along }, orientation });
  }
  found.sort((a, b) => b.way.along - a.way.along);
  return {
    ways: found.map((f) => f.way),
    orientations: found.map((f) => f.orientation),
  };
}

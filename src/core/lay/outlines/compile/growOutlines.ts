import { offsetOf, ringsOf } from "../../../geometry/clipper.ts";
import { posePolygon } from "../../../geometry/pose.ts";
import { type Polygon, polygonArea, solid } from "../../../geometry/ring.ts";
import type { RegionJob } from "../../problem/region.ts";
import { coarsened } from "./coarsen.ts";
import { counterClockwise } from "./gridTools.ts";
import { simplifyOutward } from "./simplifyOutward.ts";

/** How far simplification may move an outline, mm; less than a blade's wander. */
const SIMPLIFY_MM = 0.05;

/** Outlines with more corners than this lose those that matter least beforehand: simplifying takes the square of them. */
const PLENTY = 200;
const PLENTY_SHARE = 2e-5;

/** Sharp corners keep their corner up to twice the distance: never closer than a round join would allow. */
const MITER = { kind: "miter", limit: 2 } as const;

/** The outline grown by `distance` (half the gap), so that touching grown outlines lie a full gap apart. */
export function grownOutline(polygon: Polygon, distance: number): Polygon {
  const ringed: Polygon = { outer: counterClockwise(polygon.outer), holes: polygon.holes };
  const outlines = distance === 0 ? [ringed] : offsetOf(ringsOf(ringed), distance, MITER);
  const largest = outlines.reduce((a, b) => (polygonArea(b) > polygonArea(a) ? b : a));
  const { outer } = largest;
  const fewer = outer.length / 2 > PLENTY ? coarsened(outer, PLENTY_SHARE) : outer;
  return { outer: simplifyOutward(fewer, SIMPLIFY_MM), holes: largest.holes };
}

/**
 * What a margin in a shaped region is kept larger by, as a share of the region's size: contacts are good to the
 * search's grid, which is as coarse as the region is large, and a small piece's distance is judged by its own size.
 */
const SAFE_SHARE = 1e-7;

function safeMargin({ region, margin }: RegionJob): number {
  return margin > 0 ? margin + SAFE_SHARE * Math.max(region.width, region.length ?? 0) : margin;
}

/**
 * Whether pieces are held to a shaped region's edge as they are, not grown by half the gap: with a smaller margin the
 * edge would have to move out for grown ones, and what juts into the region would lose its tip, over which pieces
 * could lie; a hole narrower than the gap would be gone.
 */
export function isBareAtEdge({ region, gap, margin }: RegionJob): boolean {
  return region.outline !== null && margin < gap / 2;
}

/** How far a shaped region's edge is moved in for the pieces that are held to it, mm. */
function edgeInset(job: RegionJob): number {
  return isBareAtEdge(job) ? safeMargin(job) : safeMargin(job) - job.gap / 2;
}

/**
 * Where pieces may lie in a shaped region, its holes not counted: the outline moved in by the margin and, if pieces
 * are grown there, out again by half the gap. A thin neck may split it, or nothing may be left.
 */
export function usableOutlines(job: RegionJob): Polygon[] {
  const outline = job.region.outline;
  if (outline === null) return [];
  const outer = counterClockwise(outline.outer);
  const inset = edgeInset(job);
  if (inset === 0) return [solid(outer)];
  return offsetOf([outer], -inset, MITER).map((part) => solid(part.outer));
}

/** Something that stays where it is. */
interface FixedOutline {
  readonly outline: Polygon;
  /** Part of the region's edge. */
  readonly isEdge: boolean;
}

/** Fixed outlines grown between two pauses. */
const FIXED_PER_TURN = 16;

/** Everything that stays where it is, grown: flaws, holes of the region, pinned pieces. mm, in the region. Yields after some. */
export function* fixedOutlines(job: RegionJob): Generator<void, FixedOutline[]> {
  const half = job.gap / 2;
  const out: FixedOutline[] = [];
  for (const flaw of job.region.flaws) {
    if (out.push({ outline: grownOutline(flaw, half), isEdge: false }) % FIXED_PER_TURN === 0) yield;
  }
  for (const hole of job.region.outline?.holes ?? []) {
    const outer = counterClockwise(hole);
    const inset = edgeInset(job);
    const moved = inset === 0 ? [solid(outer)] : offsetOf([outer], inset, MITER);
    for (const outline of moved) if (out.push({ outline, isEdge: true }) % FIXED_PER_TURN === 0) yield;
  }
  for (const pin of job.pinned) {
    const piece = job.pieces.find((candidate) => candidate.id === pin.pieceId);
    if (piece === undefined) throw new RangeError(`pinned piece ${pin.pieceId} is not in the job`);
    const outline = grownOutline(posePolygon(piece.outline, pin), half);
    if (out.push({ outline, isEdge: false }) % FIXED_PER_TURN === 0) yield;
  }
  return out;
}

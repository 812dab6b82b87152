import { ringBox } from "../../../geometry/box.ts";
import { poseRing } from "../../../geometry/pose.ts";
import { polygonArea } from "../../../geometry/ring.ts";
import { isLoose, type LayProblem, type StockPlacement } from "../../problem/layProblem.ts";
import { type Extent, fitsBox } from "../../problem/pieceExtent.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { inRegion, onStock, type StockRegion } from "../../problem/stockRegion.ts";

/** The job of one stock in a problem with many, and how its copies are numbered in the problem. */
export interface StockJob {
  readonly where: StockRegion;
  readonly job: RegionJob;
  /** Copy numbers of the problem by piece and copy of the job. */
  readonly copies: ReadonlyMap<string, readonly number[]>;
}

/**
 * The job of laying what is still needed on one stock: copies pinned here, and free copies of every piece whose box
 * fits. `free` holds the copy numbers still to be laid, by index of the piece.
 */
export function stockJob(
  problem: LayProblem,
  where: StockRegion,
  free: readonly (readonly number[])[],
  extents: readonly (readonly Extent[])[],
): StockJob {
  const { stock, region } = where;
  const pinned = problem.pinned.filter((pin) => pin.stockId === stock.id);
  const copies = new Map<string, readonly number[]>();
  const isPatternKnown = stock.kind === "roll" || stock.firstLine !== undefined;
  const pieces = problem.pieces.flatMap((piece, i) => {
    const here = pinned.filter((pin) => pin.pieceId === piece.id).map((pin) => pin.copy);
    const isOpenTo = fitsBox(extents[i]!, stock, problem.margin) && (piece.match === undefined || isPatternKnown);
    const own = isOpenTo ? [...here, ...free[i]!] : here;
    copies.set(piece.id, own);
    return own.length > 0 ? [{ ...piece, count: own.length }] : [];
  });
  const job: RegionJob = {
    region,
    pieces,
    gap: problem.gap,
    margin: problem.margin,
    leastStrip: problem.leastStrip,
    looseEdges: { side: stock.kind === "roll", end: stock.kind === "roll" },
    pinned: pinned.map((pin) => ({ ...inRegion(where, pin), copy: copies.get(pin.pieceId)!.indexOf(pin.copy) })),
    goal: region.length === null ? "shortest" : "most",
    ...patternIn(problem, where),
  };
  return { where, job, copies };
}

/** The pattern as it lies in the region of a stock, and the phases known; nothing on cloth without a pattern to match. */
function patternIn(
  { pattern, phases }: LayProblem,
  { stock, originX, originY }: StockRegion,
): Pick<RegionJob, "pattern" | "phases"> {
  if (pattern === undefined) return {};
  const [along, across] = stock.firstLine ?? [pattern.firstAlong, pattern.firstAcross];
  return { pattern: { ...pattern, firstAlong: along - originX, firstAcross: across - originY }, phases };
}

/** Placements of a region plan as the problem numbers and places them; pinned ones exactly as given. */
export function placementsOf(problem: LayProblem, { where, copies }: StockJob, plan: RegionPlan): StockPlacement[] {
  return plan.placements.map((placement) => {
    const copy = copies.get(placement.pieceId)![placement.copy]!;
    const pin = problem.pinned.find((known) => known.pieceId === placement.pieceId && known.copy === copy);
    return pin ?? { ...onStock(where, placement), copy };
  });
}

/** An engine that works on a grid tells its length to within this, mm; a plan says what its placements take. */
const SAME = 1e-9;

/** Far side of the furthest piece plus the margin, mm, measured where the pieces lie. Cost O(points). */
export function laidLength({ job }: StockJob, plan: RegionPlan): number {
  const outlines = new Map(job.pieces.map(({ id, outline }) => [id, outline.outer]));
  const ends = plan.placements.map(
    (placement) => ringBox(poseRing(outlines.get(placement.pieceId)!, placement)).maxX,
  );
  const measured = Math.max(...ends) + job.margin;
  return plan.placements.length === 0 || Math.abs(measured - plan.length) <= SAME ? plan.length : measured;
}

/** A region plan made of a problem's placements; the other way of `placementsOf`. Null when copies do not match. */
export function regionPlanFrom(
  stock: StockJob,
  placements: readonly StockPlacement[],
  length: number,
): RegionPlan | null {
  const { where, job, copies } = stock;
  const here = placements.filter((placement) => placement.stockId === where.stock.id);
  const own = here.map((placement) => {
    return { ...inRegion(where, placement), copy: copies.get(placement.pieceId)?.indexOf(placement.copy) ?? -1 };
  });
  if (own.some((placement) => placement.copy < 0)) return null;
  const left = job.pieces.map(({ id, count }) => count - own.filter(({ pieceId }) => pieceId === id).length);
  return { placements: own, left, length };
}

/**
 * Shortest length that the area alone allows on an open roll, mm: the pieces' area over the usable width, and no
 * less than the longest piece in its shortest turn, of those that may not lie aslant. Margins included.
 */
export function areaBound({ job }: StockJob, extents: ReadonlyMap<string, readonly Extent[]>): number {
  const { width } = job.region;
  const usable = width - 2 * job.margin;
  const area = job.pieces.reduce((sum, piece) => sum + piece.count * polygonArea(piece.outline), 0);
  const square = job.pieces.filter((piece) => !isLoose(piece));
  const longest = square.map(({ id }) =>
    Math.min(
      ...extents
        .get(id)!
        .filter(({ across }) => across <= usable * (1 + 1e-9))
        .map(({ along }) => along),
    ),
  );
  const tallest = longest.filter(Number.isFinite).reduce((most, along) => Math.max(most, along), 0);
  return Math.max(usable > 0 ? area / usable : 0, tallest) + 2 * job.margin;
}

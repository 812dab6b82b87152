import { ringBox } from "../../../../geometry/box.ts";
import { poseRing } from "../../../../geometry/pose.ts";
import { polygonArea } from "../../../../geometry/ring.ts";
import type { LayPattern, Placement } from "../../../problem/layProblem.ts";
import { isRectangleJob } from "../../../problem/rectangles/prepare.ts";
import type { RegionJob, RegionPlan } from "../../../problem/region.ts";
import { BREATH } from "../../../search/breath.ts";
import { isBetterRegionPlan } from "../../../search/comparePlans.ts";
import type { Engine, Search } from "../../../search/engine.ts";
import { type Rng, seededRng } from "../../../search/rng.ts";
import { type CutBox, cutTreeOf } from "../../cuts/cutTree.ts";
import { freeBoxes, type Obstructed } from "./freeBoxes.ts";
import { outsideBoxes } from "./outsideBoxes.ts";

/** mm that a ruler cannot tell from nothing. */
const TOLERANCE = 1e-3;
/** Evaluations on each box in the first round; they grow with the rounds. */
const FIRST_LOOK = 4_000;
/** What parting the cloth costs beside the search in its boxes, in evaluations: about a millisecond. */
const PARTING = 2_000;

/** Rounds after which closed cloth counts as cloth that takes no piece. */
const EMPTY_AFTER = 5;

/**
 * Ruler plans round flaws and pinned pieces and on cloth of any outline: edge-to-edge cuts part it into free boxes,
 * and `inside` lays each of them by ruler. Other parts are tried with other seeds, with more effort each round, until
 * the budget is spent. Cuts may run through flaws, never through a pinned piece.
 */
export function partedEngine(inside: Engine, tail: Engine): Engine {
  return {
    id: `${tail.id}-parted`,
    accepts: (job) => isObstructed(job) && isRectangleJob(bareJob(job)) && cutsPart(job, job.pinned),
    search: (job, budget, seed) => searchParted(job, inside, tail, budget.evaluations, seed),
  };
}

function isObstructed({ region, pinned }: RegionJob): boolean {
  return region.flaws.length > 0 || pinned.length > 0 || region.outline !== null;
}

/** The job on clear cloth of the same box. */
function bareJob(job: RegionJob): RegionJob {
  return { ...job, region: { ...job.region, outline: null, flaws: [] }, pinned: [] };
}

/** Whether straight cuts from edge to edge part these pieces. */
function cutsPart(job: RegionJob, placements: readonly Placement[]): boolean {
  const boxes = boxesOf(job, placements);
  const far = boxes.reduce((most, { x, dx }) => Math.max(most, x + dx), 0);
  const whole = { x: 0, y: 0, dx: job.region.length ?? far, dy: job.region.width };
  return boxes.length === 0 || cutTreeOf(whole, boxes, TOLERANCE) !== null;
}

function* searchParted(job: RegionJob, inside: Engine, tail: Engine, most: number, seed: number): Search {
  const rng = seededRng(seed);
  const blocked = blockedBoxes(job);
  const pins = boxesOf(job, job.pinned);
  const least = leastLength(job);
  let best = assembled(job, []);
  let evaluations = 0;
  let isTold = false;
  yield BREATH;
  const goesOn = (round: number): boolean => evaluations < most || (isWanting(job, best) && round <= 1);
  for (let round = 0; goesOn(round) && !isDone(job, best, least); round++) {
    const effort = FIRST_LOOK * 2 ** Math.min(6, Math.floor(round / 6));
    const end = boxEnd(job, blocked, best, round, rng);
    // Where parts before pinned pieces would not come off by ruler, everything lies behind them.
    const parts = isWanting(job, best) && round > 0 ? [] : freeBoxes(boxedCloth(job, end.at, blocked, pins), rng);
    const laid: Placement[] = [...job.pinned];
    const boxes: CutBox[] = parts.sort((a, b) => (round % 2 === 0 ? a.x - b.x : b.dx * b.dy - a.dx * a.dy));
    if (end.goesOn) boxes.push({ x: end.at + job.gap, y: job.margin, dx: Infinity, dy: usableWidth(job) });
    for (const box of boxes) {
      const part = partJob(job, box, laid);
      if (part.pieces.length === 0) break;
      const engine = box.dx === Infinity ? tail : inside;
      const search = engine.search(part, { evaluations: effort }, rng.below(1 << 30));
      let spent = 0;
      for (let turn = search.next(); ; turn = search.next()) {
        if (turn.done) {
          laid.push(...shifted(job, laid, turn.value.placements, box));
          break;
        }
        if (turn.value === BREATH) {
          yield BREATH;
          continue;
        }
        evaluations += turn.value.evaluations - spent;
        spent = turn.value.evaluations;
        const told = yield { evaluations, plan: null, bound: null };
        if (told && isBetterRegionPlan(job.pieces, told, best)) best = told;
      }
    }
    evaluations += PARTING;
    const plan = assembled(job, laid);
    const better = !isWanting(job, plan) && isBetterRegionPlan(job.pieces, plan, best) && cutsPart(job, laid);
    if (better) best = plan;
    // Whoever waits for a plan gets one of closed cloth too that takes no piece.
    const isNews: boolean = better || (round >= EMPTY_AFTER && !isTold && !isWanting(job, best));
    isTold ||= isNews;
    yield { evaluations, plan: isNews ? best : null, bound: null };
  }
  return best;
}

/** An open roll takes every piece, so a plan that leaves some out is none. */
function isWanting({ goal }: RegionJob, { left }: RegionPlan): boolean {
  return goal === "shortest" && left.some((count) => count > 0);
}

/** Closed cloth that holds everything cannot be laid better, nor open cloth as short as its pieces allow. */
function isDone(job: RegionJob, plan: RegionPlan, least: number): boolean {
  return (
    plan.left.every((count) => count === 0) && (job.region.length !== null || plan.length <= least + TOLERANCE)
  );
}

/** No plan is shorter than its longest piece in its shorter turn, nor than the pieces' area takes, mm. */
function leastLength(job: RegionJob): number {
  const usable = usableWidth(job);
  const area = job.pieces.reduce((sum, { outline, count }) => sum + count * polygonArea(outline), 0);
  const longest = job.pieces.map(({ outline, orientations }) => {
    const boxes = orientations.map((turn) => ringBox(poseRing(outline.outer, { ...turn, x: 0, y: 0 })));
    return Math.min(...boxes.filter((box) => box.maxY - box.minY <= usable).map((box) => box.maxX - box.minX));
  });
  return Math.max(area / usable, ...longest.filter(Number.isFinite)) + 2 * job.margin;
}

/**
 * Where the boxes end along an open roll, and whether free cloth follows. By turns: just behind the last flaw, a
 * piece's length further, or short of the best plan so far.
 */
function boxEnd(
  job: RegionJob,
  blocked: readonly CutBox[],
  best: RegionPlan,
  round: number,
  rng: Rng,
): { readonly at: number; readonly goesOn: boolean } {
  const { region, margin } = job;
  if (region.length !== null) return { at: region.length - margin, goesOn: false };
  const reach = blocked.reduce((most, { x, dx }) => Math.max(most, x + dx), margin);
  const complete = best.left.every((count) => count === 0);
  if (round % 3 === 2 && complete)
    return { at: (best.length - margin) * (1 - 0.08 * (rng.below(1000) / 1000)), goesOn: false };
  if (round % 3 === 0 || job.pieces.length === 0) return { at: reach, goesOn: true };
  const { minX, minY, maxX, maxY } = ringBox(job.pieces[rng.below(job.pieces.length)]!.outline.outer);
  return { at: reach + (rng.below(2) === 0 ? maxX - minX : maxY - minY), goesOn: true };
}

function usableWidth({ region, margin }: RegionJob): number {
  return region.width - 2 * margin;
}

function boxedCloth(job: RegionJob, end: number, blocked: readonly CutBox[], pins: readonly CutBox[]): Obstructed {
  const { margin, gap } = job;
  const box = { x: margin, y: margin, dx: end - margin, dy: usableWidth(job) };
  return { box, blocked, pins, gap };
}

/** Boxes that no free piece may touch: flaws and pinned pieces with the gap round them, missing cloth with the margin. */
function blockedBoxes(job: RegionJob): CutBox[] {
  const { region, gap, margin } = job;
  const flaws = region.flaws.map(({ outer }) => boxOf(outer));
  const missing = region.outline === null ? [] : outsideBoxes(region.outline);
  return [
    ...[...flaws, ...boxesOf(job, job.pinned)].map((box) => grown(box, gap)),
    ...missing.map((box) => grown(box, margin)),
  ];
}

function grown({ x, y, dx, dy }: CutBox, by: number): CutBox {
  return { x: x - by, y: y - by, dx: dx + 2 * by, dy: dy + 2 * by };
}

function boxesOf(job: RegionJob, placements: readonly Placement[]): CutBox[] {
  const outlines = new Map(job.pieces.map(({ id, outline }) => [id, outline.outer]));
  return placements.map((placement) => boxOf(poseRing(outlines.get(placement.pieceId)!, placement)));
}

function boxOf(ring: Float64Array): CutBox {
  const { minX, minY, maxX, maxY } = ringBox(ring);
  return { x: minX, y: minY, dx: maxX - minX, dy: maxY - minY };
}

/** Copies of each piece that are not laid yet. */
function copiesLeft(job: RegionJob, laid: readonly Placement[]): ReadonlyMap<string, readonly number[]> {
  const taken = new Set(laid.map(({ pieceId, copy }) => `${copy} ${pieceId}`));
  return new Map(
    job.pieces.map(({ id, count }) => [
      id,
      Array.from({ length: count }, (_, copy) => copy).filter((copy) => !taken.has(`${copy} ${id}`)),
    ]),
  );
}

/** The job of one box: what is still to be laid, on clear cloth without a margin. */
function partJob(job: RegionJob, box: CutBox, laid: readonly Placement[]): RegionJob {
  const left = copiesLeft(job, laid);
  const open = box.dx === Infinity;
  return {
    region: { width: box.dy, length: open ? null : box.dx, outline: null, flaws: [] },
    pieces: job.pieces.flatMap((piece) => {
      const count = left.get(piece.id)!.length;
      return count > 0 ? [{ ...piece, count }] : [];
    }),
    gap: job.gap,
    margin: 0,
    leastStrip: job.leastStrip,
    looseEdges: { side: false, end: open },
    pinned: [],
    goal: open ? "shortest" : "most",
    ...(job.pattern === undefined ? {} : { pattern: patternFrom(job.pattern, box), phases: job.phases }),
  };
}

/** The pattern as it lies in a box. */
function patternFrom(pattern: LayPattern, { x, y }: CutBox): LayPattern {
  return { ...pattern, firstAlong: pattern.firstAlong - x, firstAcross: pattern.firstAcross - y };
}

/** Placements of a box's job as the whole job numbers and places them. */
function shifted(
  job: RegionJob,
  laid: readonly Placement[],
  placements: readonly Placement[],
  box: CutBox,
): Placement[] {
  const left = copiesLeft(job, laid);
  return placements.map((placement) => ({
    ...placement,
    copy: left.get(placement.pieceId)![placement.copy]!,
    x: placement.x + box.x,
    y: placement.y + box.y,
  }));
}

function assembled(job: RegionJob, laid: readonly Placement[]): RegionPlan {
  const placements = laid.length === 0 ? job.pinned : laid;
  const left = copiesLeft(job, placements);
  const end = boxesOf(job, placements).reduce((most, { x, dx }) => Math.max(most, x + dx), 0);
  return {
    placements,
    left: job.pieces.map(({ id }) => left.get(id)!.length),
    length: placements.length === 0 ? 0 : end + job.margin,
  };
}

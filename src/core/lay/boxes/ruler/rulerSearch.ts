import type { SearchTables } from "../../problem/rectangles/searchTables.ts";
import { Incumbent } from "../../search/incumbent.ts";
import { type Rng, seededRng } from "../../search/rng.ts";
import { startOrders } from "../rectangles/skyline/orderSearch.ts";
import type { BeamGuide } from "./beam/beamState.ts";
import { type LaidWay, type RulerBeam, rulerBeam } from "./beam/rulerBeam.ts";
import { joinSegments, planEnd, type Segment, segmentsOf } from "./beam/segments.ts";
import { isSheet, sheetPlans } from "./shelves/sheetSearch.ts";
import { hasShelves, shelfPlans } from "./shelves/shelfSearch.ts";
import {
  ANY_STRIP,
  decodeSplits,
  type NarrowRule,
  SPLIT_SMALLER,
  type SplitBuffers,
  splitBuffers,
} from "./splits/splitDecode.kernel.ts";
import { splitSearch } from "./splits/splitSearch.ts";

/** One turn of the search: the plan when it got better, and what it has cost. */
export interface RulerStep {
  readonly evaluations: number;
  readonly plan: readonly LaidWay[] | null;
  /** Whether the best plan takes strips off that are narrower than wished. */
  readonly isNarrow: boolean;
}

/** A piece of order search costs about a tenth of a scored child. */
export const LOOKS_PER_EVALUATION = 10;
/** Evaluations between two yields: some 10 ms. */
const SLICE = 20_000;
/** Share of shelves when few stages are wanted; the others have 1 or 2. */
const SHELF_SHARE = 2;
/** Share of shelves on closed cloth. */
const SHEET_SHARE = 3;
const NARROWEST_BEAM = 16;
const WIDEST_BEAM = 1024;

const GUIDES: readonly BeamGuide[] = [
  { calm: 0.02, loose: 1.05, chance: 0, longRips: false },
  { calm: 0.02, loose: 1.05, chance: 0, longRips: true },
  { calm: 0.02, loose: 1, chance: 0.05, longRips: false },
  { calm: 0.05, loose: 1.1, chance: 0.05, longRips: true },
];

/** What is asked of a search. */
export interface RulerTask {
  readonly tables: SearchTables;
  /** 2: crosscut, rip and a trim; 3: crosscut, rip, crosscut and a trim; Infinity: any edge-to-edge cuts. */
  readonly stages: number;
  /** Extent of the cloth along, units; Infinity when open. */
  readonly limit: number;
  /** No plan ends before this; may rise while the search runs. */
  readonly atLeast: () => number;
  /** How narrow strips may be; absent where any will do. */
  readonly narrow?: NarrowWish | undefined;
}

/** Strips that are left over are not to be too narrow, as long as that takes little more cloth. */
export interface NarrowWish {
  readonly rule: NarrowRule;
  /** Whether a plan takes strips off that are too narrow. */
  readonly has: (plan: readonly LaidWay[]) => boolean;
  /** Units that a plan without them may be longer. */
  readonly allowance: number;
}

type Best = Incumbent<readonly LaidWay[]>;

/** A search that can be stopped anywhere; yields the evaluations it has spent since the last yield. */
type Phase = Generator<number, void, void>;

/**
 * Edge-to-edge plans, ever better: less area left out, then a nearer end. Returns when nothing can be better,
 * endless otherwise. `next(end)` tells of a complete plan with that end known elsewhere.
 *
 * Four searches take turns: order search (not for few stages), beams over the whole job, beams that rebuild a
 * few crosscut segments of the best plan on less cloth, and shelves by knapsack (for few stages).
 */
export function* rulerSearch(task: RulerTask, seed: number): Generator<RulerStep, void, number | undefined> {
  const { tables, stages } = task;
  const rng = seededRng(seed);
  const best: Best = new Incumbent<readonly LaidWay[]>([], tables.area, Infinity);
  const beam = (): RulerBeam => rulerBeam(tables, stages, WIDEST_BEAM, task.narrow?.rule);
  // What cannot lie here whole is no matter for beams, which look for whole plans only.
  const isWhole = tables.area <= task.limit * tables.width;
  const phases: { readonly phase: Phase; readonly share: number; spent: number }[] = [];
  if (stages === Infinity) phases.push({ phase: orders(task, best, rng), share: 1, spent: 0 });
  if (isWhole)
    phases.push(
      { phase: wholeBeams(task, beam(), best, rng), share: 2, spent: 0 },
      { phase: rebuilds(task, beam(), best, rng), share: 2, spent: 0 },
    );
  if (isSheet(tables, task.limit)) {
    const plans = sheetPlans(
      tables,
      task.limit,
      stackedIn(stages),
      (areaLeft, end, plan) => offer(task, best, areaLeft, end, plan),
      rng,
    );
    phases.push({ phase: plans, share: SHEET_SHARE, spent: 0 });
  }
  if (isWhole && stages < Infinity && hasShelves(tables)) {
    const plans = shelfPlans(
      tables,
      stackedIn(stages),
      () => capOf(task, best) + 1,
      (end, plan) => offer(task, best, 0, end, () => plan),
      rng,
    );
    phases.push({ phase: plans, share: SHELF_SHARE, spent: 0 });
  }
  let evaluations = 0;
  while (phases.length > 0 && (best.areaLeft > 0 || best.end > task.atLeast())) {
    const turn = phases.reduce((a, b) => (b.spent / b.share < a.spent / a.share ? b : a));
    const step = turn.phase.next();
    if (step.done) phases.splice(phases.indexOf(turn), 1);
    const spent = step.value ?? 0;
    turn.spent += spent;
    evaluations += spent;
    const isNarrow = task.narrow !== undefined && planEnd(tables, best.plan) < best.end;
    const elsewhere = yield { evaluations, plan: best.takeNews(), isNarrow };
    if (elsewhere !== undefined) best.adopt(elsewhere);
  }
}

/** Pieces that may lie in a column of a shelf. */
function stackedIn(stages: number): number {
  return stages === 2 ? 1 : Infinity;
}

/** Offers a plan; one with strips that are too narrow counts as longer than it is. */
function offer(
  { narrow }: RulerTask,
  best: Best,
  areaLeft: number,
  end: number,
  plan: () => readonly LaidWay[],
): boolean {
  if (narrow === undefined) return best.offer(areaLeft, end, plan);
  if (areaLeft > best.areaLeft || (areaLeft === best.areaLeft && end >= best.end)) return false;
  const found = plan();
  return best.offer(areaLeft, narrow.has(found) ? end + narrow.allowance : end, () => found);
}

/** Where the next plan has to end: on the cloth, and before the best one if that is complete. */
function capOf(task: RulerTask, best: Best): number {
  return best.areaLeft > 0 ? task.limit : Math.min(task.limit, best.end - 1);
}

function* orders(task: RulerTask, best: Best, rng: Rng): Phase {
  const { tables } = task;
  const buffers = splitBuffers(tables);
  const open = Math.min(task.limit, tables.pieces * Math.max(...tables.wayAlong));
  const splits = new Uint8Array(tables.pieces).fill(SPLIT_SMALLER);
  const wished = task.narrow?.rule ?? ANY_STRIP;
  let rule = ANY_STRIP;
  let start = new Int32Array(0);
  for (const order of startOrders(tables)) {
    const areaLeft = decodeSplits(tables, order, splits, open, buffers, wished);
    let isBetter = offer(task, best, areaLeft, buffers.result[1]!, () => decoded(buffers));
    if (areaLeft === 0) rule = wished;
    else if (task.narrow !== undefined) {
      // Where some piece finds no place without a narrow strip beside it, there is one.
      const anyLeft = decodeSplits(tables, order, splits, open, buffers);
      if (offer(task, best, anyLeft, buffers.result[1]!, () => decoded(buffers))) isBetter = true;
    }
    if (isBetter || start.length === 0) start = order.slice();
    yield Math.ceil(buffers.result[2]! / LOOKS_PER_EVALUATION);
  }
  const search = splitSearch(tables, start, rng, rule);
  // End of a plan that was refused for its narrow strips: a shorter one is sought, until none is found.
  let refused = Infinity;
  for (let round = 5 * SLICE * LOOKS_PER_EVALUATION; ; round *= 1.5) {
    const cap = Math.min(open, capOf(task, best), refused - 1);
    search.begin(cap, round);
    for (let state = "more"; state === "more"; ) {
      const before = search.spent();
      state = search.advance(SLICE * LOOKS_PER_EVALUATION);
      if (state === "found" || search.least() < best.areaLeft) {
        const areaLeft = search.decodeBest(cap);
        const end = search.buffers.result[1]!;
        const isBetter = offer(task, best, areaLeft, end, () => decoded(search.buffers));
        refused = state === "found" && task.narrow !== undefined && !isBetter ? end : Infinity;
      } else if (state === "over") refused = Infinity;
      yield Math.ceil((search.spent() - before) / LOOKS_PER_EVALUATION) + (task.narrow === undefined ? 0 : 1);
    }
  }
}

function decoded(buffers: SplitBuffers): LaidWay[] {
  return Array.from({ length: buffers.result[0]! }, (_, i) => ({
    way: buffers.outWay[i]!,
    across: buffers.outAcross[i]!,
    along: buffers.outAlong[i]!,
  }));
}

/**
 * Beams for one unit less than the best, each round of guides wider than the last unless it was a success; without regard
 * to narrow strips where there is no plan without them.
 */
function* wholeBeams(task: RulerTask, strict: RulerBeam, best: Best, rng: Rng): Phase {
  const { tables } = task;
  const least = Math.ceil(tables.area / tables.width);
  let breadth = NARROWEST_BEAM;
  let loosest = Math.ceil(least * 1.2) + 1;
  // One piece behind the other: where not even that goes, some piece leaves a narrow strip wherever it lies.
  const ample = 2 * tables.pieces * Math.max(...tables.wayAlong);
  let beam = strict;
  for (let round = 0; ; round++) {
    const cap = capOf(task, best);
    const height = cap === Infinity ? loosest : cap;
    if (height < least) return;
    beam.begin({ counts: tables.sizeCount, height, breadth, guide: GUIDES[round % GUIDES.length]! }, rng);
    const state = yield* runBeam(beam, () => capOf(task, best) < height);
    let isBetter = false;
    if (state === "found") {
      const plan = beam.plan();
      isBetter = offer(task, best, 0, planEnd(tables, plan), () => plan);
    }
    // A plan that is refused for its narrow strips is no success.
    if (state === "found" && (isBetter || task.narrow === undefined)) continue;
    if (cap === Infinity && loosest > ample) beam = rulerBeam(tables, task.stages, WIDEST_BEAM);
    else if (cap === Infinity) loosest = Math.ceil(loosest * 1.15);
    else if (round % GUIDES.length === GUIDES.length - 1) breadth = Math.min(WIDEST_BEAM, breadth * 2);
  }
}

/** Rebuilds one to four segments of the best plan on one unit less. */
function* rebuilds(task: RulerTask, beam: RulerBeam, best: Best, rng: Rng): Phase {
  const { tables } = task;
  for (;;) {
    const { plan } = best;
    const segments = segmentsOf(tables, plan);
    if (segments.length < 2 || best.areaLeft > 0 || planEnd(tables, plan) > best.end) {
      yield SLICE;
      continue;
    }
    const picked = someSegments(segments, 1 + rng.below(Math.min(4, segments.length)), rng);
    const counts = new Int32Array(tables.sizes);
    for (const segment of picked) for (const { way } of segment.laid) counts[tables.waySize[way]!]!++;
    const height = picked.reduce((sum, segment) => sum + segment.height, 0) - 1;
    const breadth = NARROWEST_BEAM << rng.below(3);
    beam.begin({ counts, height, breadth, guide: { ...GUIDES[rng.below(GUIDES.length)]!, chance: 0.1 } }, rng);
    if ((yield* runBeam(beam, () => best.plan !== plan)) !== "found") continue;
    const rest = segments.filter((segment) => !picked.includes(segment));
    const joined = joinSegments([...rest, ...segmentsOf(tables, beam.plan())]);
    offer(task, best, 0, planEnd(tables, joined), () => joined);
  }
}

function someSegments(segments: readonly Segment[], count: number, rng: Rng): Segment[] {
  const pool = [...segments];
  return Array.from({ length: count }, () => pool.splice(rng.below(pool.length), 1)[0]!);
}

/** Runs a beam to its end, or until it can no longer help. */
function* runBeam(beam: RulerBeam, stale: () => boolean): Generator<number, "found" | "over", void> {
  for (;;) {
    const before = beam.spent();
    const state = beam.advance(SLICE);
    yield beam.spent() - before + 1;
    if (state !== "more") return state;
    if (stale()) return "over";
  }
}

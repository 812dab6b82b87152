import { type BoundStep, jointBound } from "../../bounds/jointBound.ts";
import type { BoundHolder } from "../../bounds/quickBound.ts";
import { type ReachableLengths, reachableLengths } from "../../bounds/reachableLengths.ts";
import { sweepTurns } from "../../bounds/sweepTurns.ts";
import type { PlacedRectangle } from "../../problem/rectangles/rectangleJob.ts";
import { type SearchTables, transposedTables } from "../../problem/rectangles/searchTables.ts";
import { BREATH, type Breath, nextTurn } from "../../search/breath.ts";
import type { Rng } from "../../search/rng.ts";
import { type BeamMemory, beamMemory } from "./beam/beamMemory.ts";
import { type BeamSearch, beamSearch, guideOf, widestBeam } from "./beam/beamSearch.ts";
import type { RectangleIncumbent } from "./incumbent.ts";
import { decodedRectangles, type OrderSearch, orderSearch } from "./skyline/orderSearch.ts";
import { valueCorrection } from "./skyline/valueCorrection.ts";

/** Looks between two yields: some five milliseconds. */
export const SLICE = 200_000;

/** First turn of each search; turns then grow by `GROWTH` from round to round. */
const FIRST_TURN = 500_000;
const GROWTH = 1.5;
/** Factor on the share of beams when hardly any waste is allowed. */
const TIGHT_BEAM_SHARE = 0.4;
/** Shortest annealing round of the order search. */
const ROUND = 3_000_000;
/** What the joint bound may spend at once, after the first plans, and of every later turn. */
const FIRST_BOUND_TURN = 3_000_000;
const TURN_WITH_BOUND = 1_000_000;
const BOUND_SHARE = 0.1;
/** Share of the work for row fills. */
const FILL_SHARE = 0.25;
/** What sweeps may spend after every turn. */
const SWEEP_SHARE = 0.6;

/** Ends of hollows that a proving beam tries in every state at most, and the work to list them (some milliseconds). */
const MOST_HOLLOWS = 4_000;
const MOST_LISTING = 4_000_000;

/** How much of the gap the next plan is to close; less after every failure. */
export interface Ambition {
  share: number;
}

export const FIRST_AMBITION = 0.3;
const LEAST_AMBITION = 0.02;

function failed({ ambition }: PortfolioContext): void {
  ambition.share = Math.max(LEAST_AMBITION, ambition.share / 2);
}

/** What the portfolio shares with the engine that drives it. */
export interface PortfolioContext {
  readonly tables: SearchTables;
  readonly incumbent: RectangleIncumbent;
  readonly reachable: ReachableLengths;
  readonly rng: Rng;
  /** Proven lower bound on the end, units; rises while the search runs. */
  readonly bound: BoundHolder;
  readonly ambition: Ambition;
  /** Order that gave the first plan. */
  readonly order: Int32Array;
}

/**
 * Shortens a complete plan on an open region until it meets the bound: an annealed order search and beams with
 * different guides take turns, all at the next shorter reachable length. Yields the looks spent since the last
 * yield.
 */
export function* shorten(context: PortfolioContext): Generator<number | Breath, void, void> {
  const { tables, incumbent, bound, reachable } = context;
  const orders = orderRunner(context);
  const beams = beamRunner(context);
  let turn = FIRST_TURN;
  const bounds = boundTurns(context);
  const sweeps = sweepTurns(tables, reachable, bound, () => incumbent.end);
  const fills = valueCorrection(tables, context.rng);
  while (incumbent.end > bound.value) {
    if (fills) yield* fills.turn(turn * FILL_SHARE, (end, rectangles) => incumbent.offerLaid(0, end, rectangles));
    if (incumbent.end <= bound.value) return;
    // With hardly any waste allowed and pieces all different, beams fill up with near twins; orders find more.
    const tight = tables.pieces < 1.5 * tables.sizes && isTight(tables, nextTarget(context));
    const beamShare = tight ? TIGHT_BEAM_SHARE * beams.share : beams.share;
    yield* orders(turn * (1 - beamShare) * 2);
    if (incumbent.end <= bound.value) return;
    if (beamShare > 0) yield* beams.turn(turn * beamShare * 2);
    if (incumbent.end <= bound.value) return;
    const toBeBounded = turn < TURN_WITH_BOUND && GROWTH * turn >= TURN_WITH_BOUND;
    yield* bounds(toBeBounded ? FIRST_BOUND_TURN : turn * BOUND_SHARE);
    yield* sweeps(turn * SWEEP_SHARE);
    turn *= GROWTH;
  }
}

/** The joint bound in turns; nothing once it is finished. */
function boundTurns({
  tables,
  incumbent,
  reachable,
  bound,
}: PortfolioContext): (looks: number) => Generator<number | Breath, void, void> {
  let raising: Generator<BoundStep | Breath, number, void> | null = null;
  let finishedAt = -1;
  return function* turn(looks: number): Generator<number | Breath, void, void> {
    if (raising === null) {
      if (finishedAt === bound.value) return;
      raising = jointBound(tables, reachable, bound.value, () => incumbent.end);
    }
    for (let left = looks; left > 0; ) {
      const step: IteratorResult<BoundStep, number> = yield* nextTurn(raising);
      if (step.done) {
        raising = null;
        bound.value = Math.max(bound.value, step.value);
        finishedAt = bound.value;
        return;
      }
      bound.value = Math.max(bound.value, step.value.bound);
      left -= step.value.work;
      yield step.value.work;
    }
  };
}

/** The next length worth trying: reachable, and a share of the gap shorter that shrinks with every failure. */
function nextTarget({ incumbent, reachable, bound, ambition }: PortfolioContext): number {
  const step = Math.max(1, Math.floor((incumbent.end - bound.value) * ambition.share));
  return Math.max(bound.value, reachable.atMost(incumbent.end - step));
}

function isTight(tables: SearchTables, cap: number): boolean {
  return cap * tables.width - tables.area < 0.002 * tables.area;
}

/**
 * Runs rounds of the order search. When hardly any waste is allowed, some of them on the job seen from the side: two
 * of three from the side that gives the shorter front, since a shorter front is closed exactly more often.
 */
function orderRunner(context: PortfolioContext): (looks: number) => Generator<number | Breath, void, void> {
  const { tables, incumbent, bound, order, rng } = context;
  const upright = orderSearch(tables, order, rng);
  let sideways: { readonly cap: number; readonly tables: SearchTables; readonly search: OrderSearch } | null = null;
  let rounds = 0;

  return function* turn(looks: number): Generator<number | Breath, void, void> {
    let left = looks;
    while (left > 0 && incumbent.end > bound.value) {
      const cap = nextTarget(context);
      const most = Math.min(left, Math.max(ROUND, looks / 4));
      rounds++;
      if (isTight(tables, cap) && tables.blocked.length === 0 && (rounds % 3 === 0) !== cap < tables.width) {
        if (sideways?.cap !== cap) {
          const turned = transposedTables(tables, cap);
          sideways = { cap, tables: turned, search: orderSearch(turned, order, rng) };
        }
        left -= yield* round(sideways.search, cap, most, sideways.tables);
      } else left -= yield* round(upright, cap, most, null);
      if (incumbent.end > cap) failed(context);
    }
  };

  /** One round for plans up to `cap`, on the tables `aside` seen from the side unless null. Returns its looks. */
  function* round(
    search: OrderSearch,
    cap: number,
    looks: number,
    aside: SearchTables | null,
  ): Generator<number | Breath, number, void> {
    const start = search.spent();
    yield* search.begin(aside === null ? cap : tables.width, looks);
    let before = start;
    for (let state = "more"; state === "more"; ) {
      state = search.advance(SLICE);
      if (state === "found") {
        yield BREATH;
        const laid = decodedRectangles(aside ?? tables, search.buffers);
        const rectangles = aside === null ? laid : laid.map(turned);
        incumbent.offerLaid(0, endOf(tables, rectangles), () => rectangles);
      }
      yield search.spent() - before;
      before = search.spent();
      if (incumbent.end <= cap) break;
    }
    return before - start;
  }
}

interface BeamRunner {
  /** Share of the work that beams should get. */
  readonly share: number;
  turn(looks: number): Generator<number | Breath, void, void>;
}

/** Runs beams one after another, each with another guide, some of them on the job seen from the side. */
function beamRunner(context: PortfolioContext): BeamRunner {
  const { tables, incumbent, rng, bound, reachable } = context;
  const fits = tables.blocked.length === 0 && tables.pieces <= 2000 && tables.sizes <= 400;
  const duplicates = tables.pieces / Math.max(1, tables.sizes);
  const turns = tables.ways > tables.sizes;
  const widest = widestBeam(tables);
  let memory: BeamMemory | null = null;
  let run = 0;
  // Looks that a beam one state wide takes, learnt from the runs so far.
  let looksPerState = tables.pieces * Math.min(tables.ways, 30);

  function* turn(looks: number): Generator<number | Breath, void, void> {
    let left = looks;
    while (left > 0 && incumbent.end > bound.value) {
      const cap = nextTarget(context);
      // From the side only when hardly any waste is allowed: then every corner must be filled anyway.
      const transposed = run % 2 === 1 && isTight(tables, cap);
      const hollows = tables.sizes <= 4 && run % 3 === 2 ? hollowsOf(transposed) : null;
      const proving = hollows !== null;
      const blocks = turns && duplicates >= 1.5 && run % 2 === 0 && !proving;
      const guide = guideOf(run, rng, blocks, hollows);
      const share = run % 2 === 0 ? 0.5 : 0.2;
      run++;
      const width = Math.min(widest, Math.max(16, 2 ** Math.round(Math.log2((share * looks) / looksPerState))));
      const searched = transposed ? transposedTables(tables, cap) : tables;
      // Seen from the side the numbers of sizes and ways are the same, so one memory serves both.
      if (memory === null || memory.beamWidth < width) {
        memory = beamMemory(tables, width);
        yield BREATH;
      }
      const beam = beamSearch(searched, guide, transposed ? tables.width : cap, { ...memory, beamWidth: width });
      yield* runBeam(beam, cap, transposed);
      if (incumbent.end > cap && proving && beam.isExhausted()) {
        bound.value = Math.max(bound.value, reachable.atLeast(cap + 1));
      }
      if (incumbent.end > cap) failed(context);
      left -= beam.spent();
      if (beam.spent() > width) looksPerState = 0.7 * looksPerState + (0.3 * beam.spent()) / width;
    }
  }

  /**
   * Where a hollow may end: sums of extents across (along, when transposed). Null when they are too many to try each
   * in every state, or to list within a turn: nothing would be proven.
   */
  function hollowsOf(transposed: boolean): Int32Array | null {
    const longest = transposed ? incumbent.end : tables.width;
    if (longest * tables.ways > MOST_LISTING) return null;
    const sums = reachableLengths(transposed ? tables : transposedTables(tables, incumbent.end), longest);
    const hollows = sums.list(longest);
    return hollows.length > MOST_HOLLOWS ? null : hollows;
  }

  function* runBeam(beam: BeamSearch, cap: number, transposed: boolean): Generator<number | Breath, void, void> {
    let before = 0;
    for (let state: string = "more"; state === "more"; ) {
      state = beam.advance(SLICE);
      if (state === "breath") {
        yield BREATH;
        state = "more";
        continue;
      }
      if (state === "found") {
        const rectangles = transposed ? beam.rectangles().map(turned) : beam.rectangles();
        incumbent.offerLaid(0, endOf(tables, rectangles), () => rectangles);
      }
      yield beam.spent() - before;
      before = beam.spent();
      if (incumbent.end <= cap) return;
    }
  }

  return { share: fits ? (duplicates >= 1.5 ? 0.7 : 0.5) : 0, turn };
}

function turned(rectangle: PlacedRectangle): PlacedRectangle {
  return { ...rectangle, along: rectangle.across, across: rectangle.along };
}

/** Furthest end of the rectangles, units. */
export function endOf(tables: SearchTables, rectangles: readonly PlacedRectangle[]): number {
  let end = 0;
  for (const { size, way, along } of rectangles) {
    const index = way === 0 ? tables.sizeFirstWay[size]! : tables.sizeSecondWay[size]!;
    end = Math.max(end, along + tables.wayAlong[index]!);
  }
  return end;
}

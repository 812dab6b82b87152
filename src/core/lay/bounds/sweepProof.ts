import type { SearchTables } from "../problem/rectangles/searchTables.ts";
import { BREATH, type Breath } from "../search/breath.ts";
import { barRelaxation } from "./barRelaxation.ts";
import { resumeState, SWEEP_FITS, SWEEP_GOES_ON, SWEEP_PAUSES, sweepState } from "./sweep.kernel.ts";
import { type SweepPrices, type SweepTask, sweepMemory } from "./sweepMemory.ts";

/** What a sweep shows of a trial length: no plan ends there, the relaxation allows one, or it was too much work. */
export type SweepVerdict = "impossible" | "open" | "too much";

/** What trying one choice costs, in looks of the searches. */
const LOOKS_PER_CHOICE = 10;
/** Choices between two yields. */
const CHOICES_PER_STEP = 30_000;
/** Choices between two breaths. */
const CHOICES_PER_BREATH = 4_000;
/** Ways and units beyond which sweeps are hopeless. */
const MOST_WAYS = 24;
const MOST_UNITS = 20_000;

/** Whether sweeps are worth trying. */
export function isSweepable(tables: SearchTables, length: number): boolean {
  return tables.blocked.length === 0 && tables.ways <= MOST_WAYS && Math.max(length, tables.width) <= MOST_UNITS;
}

/**
 * Tries to show that no plan ends at `length` or before: pieces seen from the side are jobs on a machine of the
 * width's capacity that must be done by `length` (and with the two sides swapped), each whole and without a break;
 * only where across they lie is left open. All schedules pushed to the start are swept from end to end, alike ones
 * kept once, and dropped as soon as the dual prices of the bar relaxation, or the plain area, show too much waste.
 * Tighter than the bars alone, which may take a piece apart. Yields work in looks.
 *
 * Cost:   up to `states` states per direction.
 * Source: contiguous one-dimensional relaxation: Martello, Monaci & Vigo 2003, INFORMS J. Comput. 15:310–319.
 */
export function* sweepProof(
  tables: SearchTables,
  length: number,
  states: number,
): Generator<number | Breath, SweepVerdict, void> {
  const ways = Array.from({ length: tables.ways }, (_, way) => way).filter(
    (way) => tables.wayAlong[way]! <= length,
  );
  if (new Set(ways.map((way) => tables.waySize[way]!)).size < tables.sizes) return "impossible";
  const solving = barRelaxation(tables, ways, length).solve(new Float64Array(ways.length), true);
  let solution = solving.next();
  for (; !solution.done; solution = solving.next()) yield solution.value;
  if (!solution.value.possible) return "impossible";
  let verdict: SweepVerdict = "open";
  for (const crosswise of [true, false]) {
    const seen = yield* swept(sweepTask(tables, ways, length, crosswise, solution.value.prices), states);
    if (seen === "impossible") return seen;
    if (seen === "too much") verdict = seen;
  }
  return verdict;
}

function* swept(task: SweepTask, states: number): Generator<number | Breath, SweepVerdict, void> {
  const memory = sweepMemory(task, states);
  yield BREATH;
  let told = 0;
  let breathed = 0;
  for (let time = 0; time < task.horizon; time++) {
    for (let state = memory.head[time]!; state >= 0; state = memory.next[state]!) {
      let verdict = sweepState(task, memory, state, CHOICES_PER_BREATH);
      while (verdict === SWEEP_PAUSES) {
        yield BREATH;
        verdict = resumeState(task, memory, state, CHOICES_PER_BREATH);
      }
      if (verdict !== SWEEP_GOES_ON) return verdict === SWEEP_FITS ? "open" : "too much";
      if (memory.tally[2]! - breathed >= CHOICES_PER_BREATH) {
        breathed = memory.tally[2]!;
        yield BREATH;
      }
      if (memory.tally[2]! - told < CHOICES_PER_STEP) continue;
      yield LOOKS_PER_CHOICE * (memory.tally[2]! - told);
      told = memory.tally[2]!;
    }
  }
  yield LOOKS_PER_CHOICE * (memory.tally[2]! - told);
  return "impossible";
}

/** The job seen along the roll (`crosswise`: the width is the capacity) or from the side. */
function sweepTask(
  tables: SearchTables,
  ways: readonly number[],
  length: number,
  crosswise: boolean,
  prices: Float64Array,
): SweepTask {
  const extent = crosswise ? tables.wayAcross : tables.wayAlong;
  const order = Array.from(ways, (_, i) => i).sort((a, b) => extent[ways[b]!]! - extent[ways[a]!]! || a - b);
  const sorted = order.map((i) => ways[i]!);
  const kinds = ways.length;
  const across = Float64Array.from(sorted, (way) => tables.wayAcross[way]!);
  const along = Float64Array.from(sorted, (way) => tables.wayAlong[way]!);
  const size = Int32Array.from(sorted, (way) => tables.waySize[way]!);
  const none = new Float64Array(kinds);
  const bars: DualSolution = {
    cross: Float64Array.from(order, (i) => prices[i]!),
    lengthwise: Float64Array.from(order, (i) => prices[kinds + i]!),
    crossBar: prices[2 * kinds]!,
    lengthwiseBar: prices[2 * kinds + 1]!,
  };
  const area: DualSolution = crosswise
    ? { cross: across, lengthwise: none, crossBar: tables.width, lengthwiseBar: 0 }
    : { cross: none, lengthwise: along, crossBar: 0, lengthwiseBar: length };
  const need = Int32Array.from(crosswise ? across : along);
  return {
    kinds,
    sizes: tables.sizes,
    need,
    last: Int32Array.from(crosswise ? along : across),
    size,
    count: tables.sizeCount,
    capacity: crosswise ? tables.width : length,
    horizon: crosswise ? length : tables.width,
    prices: sweepPrices(tables, length, crosswise, { across, along, size, need }, [bars, area].filter(hasWorth)),
  };
}

/** Prices under which no bar is worth more than its own price. */
interface DualSolution {
  readonly cross: Float64Array;
  readonly lengthwise: Float64Array;
  readonly crossBar: number;
  readonly lengthwiseBar: number;
}

/** False for the prices of a relaxation that failed. */
function hasWorth({ crossBar, lengthwiseBar }: DualSolution): boolean {
  return crossBar + lengthwiseBar > 0;
}

interface Kinds {
  readonly across: Float64Array;
  readonly along: Float64Array;
  readonly size: Int32Array;
  readonly need: Int32Array;
}

function sweepPrices(
  tables: SearchTables,
  length: number,
  crosswise: boolean,
  { across, along, size, need }: Kinds,
  duals: readonly DualSolution[],
): SweepPrices {
  const kinds = size.length;
  const sets = duals.length;
  const worth = new Float64Array(sets * kinds);
  const dearer = new Float64Array(sets * kinds);
  const richest = new Float64Array(sets * (kinds + 1));
  const capacity = new Float64Array(sets);
  const slack = new Float64Array(sets);
  duals.forEach((dual, d) => {
    const whole = dual.crossBar * length + dual.lengthwiseBar * tables.width;
    capacity[d] = (crosswise ? dual.crossBar : dual.lengthwiseBar) / whole;
    const cost = Float64Array.from(
      size,
      (_, k) => (dual.cross[k]! * along[k]! + dual.lengthwise[k]! * across[k]!) / whole,
    );
    const cheapest = new Float64Array(tables.sizes).fill(Infinity);
    size.forEach((s, k) => {
      cheapest[s] = Math.min(cheapest[s]!, cost[k]!);
    });
    slack[d] = 1 - cheapest.reduce((sum, least, s) => sum + least * tables.sizeCount[s]!, 0);
    for (let k = kinds - 1; k >= 0; k--) {
      worth[d * kinds + k] = (crosswise ? dual.cross[k]! : dual.lengthwise[k]!) / whole;
      dearer[d * kinds + k] = cost[k]! - cheapest[size[k]!]!;
      const row = d * (kinds + 1);
      richest[row + k] = Math.max(richest[row + k + 1]!, worth[d * kinds + k]! / need[k]!);
    }
  });
  return { sets, worth, dearer, richest, capacity, slack };
}

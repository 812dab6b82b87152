/**
 * What a sweep works on: pieces seen from one side as jobs that take `need` of a capacity for `last` units, in
 * whole numbers. A kind is a way in which pieces of a size may lie.
 */
export interface SweepTask {
  readonly kinds: number;
  readonly sizes: number;
  /** Kinds that need most first. */
  readonly need: Int32Array;
  readonly last: Int32Array;
  readonly size: Int32Array;
  readonly count: Int32Array;
  readonly capacity: number;
  readonly horizon: number;
  readonly prices: SweepPrices;
}

/**
 * Prices of `sets` kinds, each a dual solution that gives the whole region the worth 1: what a piece of a kind is
 * worth per unit it lasts, what the capacity is, and how much dearer the kind is than the cheapest of its size.
 * `slack` is what the region is worth beyond all pieces at their cheapest: waste above it rules a plan out.
 */
export interface SweepPrices {
  readonly sets: number;
  /** Row per set, a column per kind. */
  readonly worth: Float64Array;
  readonly dearer: Float64Array;
  /** Most worth per unit of need among this kind and those after it; a column more than kinds. */
  readonly richest: Float64Array;
  readonly capacity: Float64Array;
  readonly slack: Float64Array;
}

/** States of a sweep: [time, gap before, entries, left of each size, (end, kind, copies) of each entry]. */
export interface SweepMemory {
  /** [states, ints used, children tried]. */
  readonly tally: Int32Array;
  readonly ints: Int32Array;
  /** Where a state's ints begin. */
  readonly start: Int32Array;
  readonly hash: Int32Array;
  /** Next state of the same time, −1 at the end; first state of each time. */
  readonly next: Int32Array;
  readonly head: Int32Array;
  /** Row per state: slack left under each set of prices. */
  readonly slack: Float64Array;
  readonly table: Int32Array;
  readonly chosen: Int32Array;
  readonly left: Int32Array;
  /** Entries of the child being made. */
  readonly child: Int32Array;
  readonly worthNow: Float64Array;
  readonly slackNow: Float64Array;
  readonly slackChild: Float64Array;
  /** Where the choices of a state were broken off: [level, room, 1 on the way down, span, most choices]. */
  readonly paused: Int32Array;
}

export const HEADER = 3;
export const ENTRY = 3;

/** Memory for up to `states` states, begun with nothing placed. */
export function sweepMemory(task: SweepTask, states: number): SweepMemory {
  const { kinds, sizes, horizon, prices } = task;
  let slots = 1024;
  while (slots < 2 * states) slots *= 2;
  const memory: SweepMemory = {
    tally: Int32Array.of(1, HEADER + sizes, 0),
    ints: new Int32Array(Math.max(4096, states * (HEADER + sizes + 6 * ENTRY))),
    start: new Int32Array(states),
    hash: new Int32Array(states),
    // A state's own is set when it is made.
    next: new Int32Array(states),
    head: new Int32Array(horizon + 1).fill(-1),
    slack: new Float64Array(states * prices.sets),
    table: new Int32Array(slots),
    chosen: new Int32Array(kinds),
    left: new Int32Array(sizes),
    child: new Int32Array(ENTRY * (task.capacity + kinds + 1)),
    worthNow: new Float64Array(prices.sets),
    slackNow: new Float64Array(prices.sets),
    slackChild: new Float64Array(prices.sets),
    paused: new Int32Array(5),
  };
  memory.next[0] = -1;
  memory.ints[1] = -1;
  memory.ints.set(task.count, HEADER);
  memory.slack.set(prices.slack);
  memory.head[0] = 0;
  return memory;
}

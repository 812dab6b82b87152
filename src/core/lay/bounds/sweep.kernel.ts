import { ENTRY, HEADER, type SweepMemory, type SweepTask } from "./sweepMemory.ts";

const TOLERANCE = 1e-6;

/** Choices beyond which one state is too much. */
const MOST_CHOICES = 100_000;

/** Results of `sweepState`. */
export const SWEEP_GOES_ON = 0;
export const SWEEP_FITS = 1;
const SWEEP_FULL = 2;
export const SWEEP_PAUSES = 3;

/**
 * Makes every child of a state: any choice of pieces that begin at the state's time beside those that still last,
 * which leads to the state at the next end. A piece begins only where it could not have begun earlier (the gap
 * before was too small), so no plan is lost that is pushed to the start; a choice that wastes more than the slack
 * under any set of prices is dropped. Children alike in time, pieces lasting and pieces left are one, the better
 * of each figure kept. Returns SWEEP_FITS once all pieces have begun, SWEEP_FULL when memory has run out or a
 * state has too many children, SWEEP_PAUSES after `patience` choices: `resumeState` then goes on.
 */
export function sweepState(task: SweepTask, memory: SweepMemory, state: number, patience: number): number {
  const { kinds, sizes, need, last, size, capacity, horizon, prices } = task;
  const { sets, worth } = prices;
  const { ints, left, worthNow, slackNow, tally, paused } = memory;
  const at = memory.start[state]!;
  const time = ints[at]!;
  const entries = ints[at + 2]!;
  const entryAt = at + HEADER + sizes;
  let room = capacity;
  for (let s = 0; s < sizes; s++) left[s] = ints[at + HEADER + s]!;
  for (let d = 0; d < sets; d++) {
    worthNow[d] = 0;
    slackNow[d] = memory.slack[state * sets + d]!;
  }
  for (let e = 0; e < entries; e++) {
    const kind = ints[entryAt + ENTRY * e + 1]!;
    const copies = ints[entryAt + ENTRY * e + 2]!;
    room -= copies * need[kind]!;
    for (let d = 0; d < sets; d++) worthNow[d]! += copies * worth[d * kinds + kind]!;
  }
  // The next end is no nearer than this.
  let span = entries > 0 ? ints[entryAt]! - time : horizon;
  for (let k = 0; k < kinds; k++) if (left[size[k]!]! > 0 && last[k]! < span) span = last[k]!;
  paused[0] = 0;
  paused[1] = room;
  paused[2] = 1;
  paused[3] = span;
  paused[4] = tally[2]! + MOST_CHOICES;
  return resumeState(task, memory, state, patience);
}

/** Goes on with the choices of a state where they were broken off; results as of `sweepState`. */
export function resumeState(task: SweepTask, memory: SweepMemory, state: number, patience: number): number {
  const { kinds, sizes, need, last, size, horizon, prices } = task;
  const { sets, worth, dearer, richest } = prices;
  const { ints, chosen, left, worthNow, slackNow, tally, paused } = memory;
  const at = memory.start[state]!;
  const time = ints[at]!;
  const gapBefore = ints[at + 1]!;
  const entries = ints[at + 2]!;
  const entryAt = at + HEADER + sizes;
  // Counts per kind as an odometer, most copies first.
  let level = paused[0]!;
  let room = paused[1]!;
  let down = paused[2] === 1;
  const span = paused[3]!;
  const mostTried = paused[4]!;
  const soon = tally[2]! + patience;
  for (;;) {
    if (tally[2]! >= soon) {
      paused[0] = level;
      paused[1] = room;
      paused[2] = down ? 1 : 0;
      return SWEEP_PAUSES;
    }
    let step = 0;
    if (down && level === kinds) {
      const verdict = childOf(task, memory, time, entryAt, entries, room);
      if (verdict !== SWEEP_GOES_ON) return verdict;
      down = false;
      level--;
    }
    if (down) {
      const most =
        need[level]! > gapBefore && time + last[level]! <= horizon
          ? Math.min(left[size[level]!]!, Math.floor(room / need[level]!))
          : 0;
      chosen[level] = most;
      step = most;
    } else {
      while (level >= 0 && chosen[level] === 0) level--;
      if (level < 0) return SWEEP_GOES_ON;
      chosen[level]!--;
      step = -1;
      tally[2]!++;
      if (tally[2]! > mostTried) return SWEEP_FULL;
    }
    room -= step * need[level]!;
    left[size[level]!]! -= step;
    down = true;
    for (let d = 0; d < sets; d++) {
      worthNow[d]! += step * worth[d * kinds + level]!;
      slackNow[d]! -= step * dearer[d * kinds + level]!;
      const idle = prices.capacity[d]! - worthNow[d]! - room * richest[d * (kinds + 1) + level + 1]!;
      if (slackNow[d]! - (idle > 0 ? idle * span : 0) < -TOLERANCE) down = false;
    }
    if (down) level++;
  }
}

/** Adds the child of the current choice, if it is within the slack. */
function childOf(
  task: SweepTask,
  memory: SweepMemory,
  time: number,
  entryAt: number,
  entries: number,
  room: number,
): number {
  const { kinds, sizes, last, horizon, prices } = task;
  const { sets } = prices;
  const { ints, chosen, left, child, worthNow, slackNow, slackChild, tally, table } = memory;
  tally[2]!++;
  let until = entries > 0 ? ints[entryAt]! : horizon + 1;
  for (let kind = 0; kind < kinds; kind++) {
    if (chosen[kind]! > 0 && time + last[kind]! < until) until = time + last[kind]!;
  }
  let anyLeft = 0;
  for (let s = 0; s < sizes; s++) anyLeft += left[s]!;
  if (anyLeft === 0) return SWEEP_FITS;
  if (until > horizon) return SWEEP_GOES_ON;
  for (let d = 0; d < sets; d++) {
    const rest = slackNow[d]! - (prices.capacity[d]! - worthNow[d]!) * (until - time);
    if (rest < -TOLERANCE || rest - laterLoss(task, left, until, d) < -TOLERANCE) return SWEEP_GOES_ON;
    slackChild[d] = rest;
  }
  // Old and new entries by end, then kind; those that end now are dropped.
  let count = 0;
  let hash = Math.imul(until, 0x2c1b3c6d);
  for (let s = 0; s < sizes; s++) hash = Math.imul(hash ^ left[s]!, 0x297a2d39) + (hash >>> 15);
  let e = 0;
  for (;;) {
    let end = horizon + 1;
    let kind = kinds;
    if (e < entries) {
      end = ints[entryAt + ENTRY * e]!;
      kind = ints[entryAt + ENTRY * e + 1]!;
    }
    let fresh = -1;
    for (let k = 0; k < kinds; k++) {
      if (chosen[k]! <= 0) continue;
      const ends = time + last[k]!;
      if (ends < end || (ends === end && k < kind)) {
        end = ends;
        kind = k;
        fresh = k;
      }
    }
    if (end > horizon) break;
    let copies = 0;
    if (e < entries && ints[entryAt + ENTRY * e] === end && ints[entryAt + ENTRY * e + 1] === kind) {
      copies = ints[entryAt + ENTRY * e + 2]!;
      e++;
    }
    if (fresh < 0 && chosen[kind]! > 0 && time + last[kind]! === end) fresh = kind;
    if (fresh >= 0) {
      copies += chosen[fresh]!;
      // Marked as written; put right below.
      chosen[fresh] = -chosen[fresh]!;
    }
    if (end === until) continue;
    child[ENTRY * count] = end;
    child[ENTRY * count + 1] = kind;
    child[ENTRY * count + 2] = copies;
    count++;
    hash = Math.imul(hash ^ (end * 31 + kind), 0x2c1b3c6d);
    hash = Math.imul((hash ^ (hash >>> 13)) + copies, 0x297a2d39);
  }
  for (let k = 0; k < kinds; k++) if (chosen[k]! < 0) chosen[k] = -chosen[k]!;
  hash ^= hash >>> 15;
  const mask = table.length - 1;
  let slot = hash & mask;
  while (table[slot] !== 0) {
    const other = table[slot]! - 1;
    if (memory.hash[other] === hash && isSameState(memory, other, until, left, sizes, count)) {
      const from = memory.start[other]!;
      if (room < ints[from + 1]!) ints[from + 1] = room;
      for (let d = 0; d < sets; d++) {
        if (slackChild[d]! > memory.slack[other * sets + d]!) memory.slack[other * sets + d] = slackChild[d]!;
      }
      return SWEEP_GOES_ON;
    }
    slot = (slot + 1) & mask;
  }
  const state = tally[0]!;
  const from = tally[1]!;
  if (state >= memory.start.length || from + HEADER + sizes + ENTRY * count > ints.length) return SWEEP_FULL;
  table[slot] = state + 1;
  memory.hash[state] = hash;
  memory.start[state] = from;
  ints[from] = until;
  ints[from + 1] = room;
  ints[from + 2] = count;
  for (let s = 0; s < sizes; s++) ints[from + HEADER + s] = left[s]!;
  for (let i = 0; i < ENTRY * count; i++) ints[from + HEADER + sizes + i] = child[i]!;
  for (let d = 0; d < sets; d++) memory.slack[state * sets + d] = slackChild[d]!;
  memory.next[state] = memory.head[until]!;
  memory.head[until] = state;
  tally[0] = state + 1;
  tally[1] = from + HEADER + sizes + ENTRY * count;
  return SWEEP_GOES_ON;
}

/** What the pieces left must cost beyond their cheapest when none can begin before `time`; Infinity when one cannot. */
function laterLoss(task: SweepTask, left: Int32Array, time: number, set: number): number {
  const { kinds, sizes, last, size, horizon, prices } = task;
  let loss = 0;
  for (let s = 0; s < sizes; s++) {
    if (left[s] === 0) continue;
    let least = Infinity;
    for (let k = 0; k < kinds; k++) {
      if (size[k] === s && time + last[k]! <= horizon && prices.dearer[set * kinds + k]! < least)
        least = prices.dearer[set * kinds + k]!;
    }
    loss += left[s]! * least;
  }
  return loss;
}

function isSameState(
  memory: SweepMemory,
  other: number,
  time: number,
  left: Int32Array,
  sizes: number,
  count: number,
): boolean {
  const { ints, child } = memory;
  const from = memory.start[other]!;
  if (ints[from] !== time || ints[from + 2] !== count) return false;
  for (let s = 0; s < sizes; s++) if (ints[from + HEADER + s] !== left[s]) return false;
  for (let i = 0; i < ENTRY * count; i++) if (ints[from + HEADER + sizes + i] !== child[i]) return false;
  return true;
}

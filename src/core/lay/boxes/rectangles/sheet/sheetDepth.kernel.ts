import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";

/** Steps of a path: pieces laid and hollows given up. */
const MOST_STEPS = 192;
const SEGMENTS = 100;
/** A step that gives the lowest hollow up to its lower wall. */
const GIVEN_UP = -1;

/** Memory of a depth-first search: the skyline after every step, and what the step did. */
export interface SheetPath {
  readonly length: number;
  /** Skyline after a step: start and level of each segment, `SEGMENTS` a step, and how many. */
  readonly starts: Int32Array;
  readonly levels: Int32Array;
  readonly segments: Int32Array;
  /** Next option to look at: ways by `order`, each at the near and the far side of the hollow; then giving it up. */
  readonly option: Int32Array;
  /** Segment the step fills; −1 before that is known. */
  readonly lowest: Int32Array;
  readonly wasted: Float64Array;
  readonly laid: Float64Array;
  /** What led to this step: a way or `GIVEN_UP`, and where it lies. */
  readonly way: Int32Array;
  readonly across: Int32Array;
  readonly along: Int32Array;
  readonly left: Int32Array;
  /** What of a room along no sum of extents along fills. */
  readonly idle: Int32Array;
  /** Depth; most area laid so far and the depth it was found at; options looked at. */
  readonly tally: Float64Array;
}

const DEPTH = 0;
export const MOST_LAID = 1;
export const FOUND = 2;
export const LOOKS = 3;

/** Memory for a sheet of `length` along. O(ways · length). */
export function sheetPath(tables: SearchTables, length: number): SheetPath {
  const reached = new Uint8Array(length + 1);
  reached[0] = 1;
  const idle = new Int32Array(length + 1);
  for (let room = 1; room <= length; room++) {
    for (let way = 0; way < tables.ways && reached[room] === 0; way++) {
      const along = tables.wayAlong[way]!;
      if (along <= room && reached[room - along] === 1) reached[room] = 1;
    }
    idle[room] = reached[room] === 1 ? 0 : idle[room - 1]! + 1;
  }
  const ints = (): Int32Array => new Int32Array(MOST_STEPS);
  return {
    length,
    starts: new Int32Array(MOST_STEPS * SEGMENTS),
    levels: new Int32Array(MOST_STEPS * SEGMENTS),
    segments: ints(),
    option: ints(),
    lowest: ints(),
    wasted: new Float64Array(MOST_STEPS),
    laid: new Float64Array(MOST_STEPS),
    way: ints(),
    across: ints(),
    along: ints(),
    left: new Int32Array(tables.sizes),
    idle,
    tally: new Float64Array(4),
  };
}

/** Begins at the empty sheet. */
export function beginPath(tables: SearchTables, path: SheetPath): void {
  path.starts[0] = 0;
  path.levels[0] = 0;
  path.segments[0] = 1;
  path.option[0] = 0;
  path.lowest[0] = -1;
  path.wasted[0] = 0;
  path.laid[0] = 0;
  path.left.set(tables.sizeCount);
  path.tally[DEPTH] = 0;
}

/**
 * Goes on for about `looks` options: the lowest hollow of the skyline, the nearest of equals, takes a piece at one of
 * its sides or is given up. A branch ends when what is given up, and what no sum of extents fills above each segment,
 * comes to more than `allowed` or than the best plan leaves. True when every branch has been seen.
 * When more has been laid than ever, `tally[FOUND]` is the depth whose path holds it; the caller reads it and calls again.
 */
export function advancePath(
  tables: SearchTables,
  path: SheetPath,
  order: Int32Array,
  allowed: number,
  looks: number,
): boolean {
  const { width, wayAcross, wayAlong, waySize, sizeArea } = tables;
  const { length, starts, levels, segments, option, lowest, wasted, laid, way, across, along, left, idle, tally } =
    path;
  const options = 2 * order.length;
  const sheet = width * length;
  const until = tally[LOOKS]! + looks;
  let depth = tally[DEPTH]!;
  tally[FOUND] = -1;
  while (depth >= 0) {
    const at = depth * SEGMENTS;
    const count = segments[depth]!;
    if (lowest[depth]! < 0) {
      tally[LOOKS]!++;
      let waste = wasted[depth]!;
      let low = 0;
      for (let s = 0; s < count; s++) {
        const end = s + 1 < count ? starts[at + s + 1]! : width;
        waste += (end - starts[at + s]!) * idle[length - levels[at + s]!]!;
        if (levels[at + s]! < levels[at + low]!) low = s;
      }
      lowest[depth] = low;
      option[depth] = 0;
      const isMore = laid[depth]! > tally[MOST_LAID]!;
      if (isMore) tally[MOST_LAID] = laid[depth]!;
      const most = Math.min(allowed, sheet - tally[MOST_LAID]! - 1);
      const full = levels[at + low]! >= length || depth + 1 >= MOST_STEPS || count + 2 >= SEGMENTS;
      if (waste > most || full) option[depth] = options + 1;
      if (isMore) {
        tally[FOUND] = depth;
        tally[DEPTH] = depth;
        return false;
      }
    }
    const low = lowest[depth]!;
    const from = starts[at + low]!;
    const end = low + 1 < count ? starts[at + low + 1]! : width;
    const level = levels[at + low]!;
    let next = option[depth]!;
    let chosen = -2;
    let place = from;
    for (; next < options; next++) {
      tally[LOOKS]!++;
      const w = order[next >> 1]!;
      const extent = wayAcross[w]!;
      if (left[waySize[w]!]! === 0 || extent > end - from || level + wayAlong[w]! > length) continue;
      const far = (next & 1) === 1;
      if (far && (extent === end - from || level === 0)) continue;
      chosen = w;
      place = far ? end - extent : from;
      next++;
      break;
    }
    if (chosen === -2 && next === options) {
      chosen = GIVEN_UP;
      next++;
    }
    option[depth] = next;
    if (chosen === -2) {
      // Every option seen: back, and the piece is free again.
      if (way[depth]! >= 0 && depth > 0) left[waySize[way[depth]!]!]!++;
      depth--;
      continue;
    }
    const to = at + SEGMENTS;
    depth++;
    let out = 0;
    for (; out < low; out++) {
      starts[to + out] = starts[at + out]!;
      levels[to + out] = levels[at + out]!;
    }
    if (chosen === GIVEN_UP) {
      const wallBefore = low > 0 ? levels[at + low - 1]! : length;
      const wallAfter = low + 1 < count ? levels[at + low + 1]! : length;
      const wall = Math.min(wallBefore, wallAfter);
      out = pushed(starts, levels, to, out, from, wall);
      wasted[depth] = wasted[depth - 1]! + (end - from) * (wall - level);
      laid[depth] = laid[depth - 1]!;
    } else {
      const top = level + wayAlong[chosen]!;
      const stop = place + wayAcross[chosen]!;
      if (place > from) out = pushed(starts, levels, to, out, from, level);
      out = pushed(starts, levels, to, out, place, top);
      if (stop < end) out = pushed(starts, levels, to, out, stop, level);
      wasted[depth] = wasted[depth - 1]!;
      laid[depth] = laid[depth - 1]! + sizeArea[waySize[chosen]!]!;
      left[waySize[chosen]!]!--;
    }
    for (let s = low + 1; s < count; s++) out = pushed(starts, levels, to, out, starts[at + s]!, levels[at + s]!);
    segments[depth] = out;
    lowest[depth] = -1;
    way[depth] = chosen;
    across[depth] = place;
    along[depth] = level;
    if (tally[LOOKS]! >= until) {
      tally[DEPTH] = depth;
      return false;
    }
  }
  tally[DEPTH] = depth;
  return true;
}

/** Writes a segment behind `out` others, or nothing where it goes on at the same level; how many there are then. */
function pushed(
  starts: Int32Array,
  levels: Int32Array,
  to: number,
  out: number,
  start: number,
  level: number,
): number {
  if (out > 0 && levels[to + out - 1] === level) return out;
  starts[to + out] = start;
  levels[to + out] = level;
  return out + 1;
}

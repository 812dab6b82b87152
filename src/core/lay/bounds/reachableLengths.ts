import type { SearchTables } from "../problem/rectangles/searchTables.ts";

/** Ends a plan can have when every piece is pushed against others: sums of extents along the roll. */
export interface ReachableLengths {
  /** Least reachable length ≥ `length`. */
  atLeast(length: number): number;
  /** Greatest reachable length ≤ `length`; 0 when there is none. */
  atMost(length: number): number;
  /** All reachable lengths up to `longest`, ascending. */
  list(longest: number): Int32Array;
}

/** Work beyond which all lengths are taken as reachable (always safe). */
const MOST_WORK = 3e7;

/**
 * Lengths up to `longest` that are a sum of extents along the roll, no more of a size than there are, starting at
 * the cut end or at the far side of a blocked box. Any plan can be pushed towards the cut end until its end is
 * one of these. Two ways of a size are counted apart, which only adds lengths. O(ways · longest).
 */
export function reachableLengths(tables: SearchTables, longest: number): ReachableLengths {
  const size = longest + 1;
  if (size * tables.ways > MOST_WORK) {
    return {
      atLeast: (length) => length,
      atMost: (length) => length,
      list: (most) => Int32Array.from({ length: most + 1 }, (_, length) => length),
    };
  }
  const reached = new Uint8Array(size);
  reached[0] = 1;
  for (let b = 1; b < tables.blocked.length; b += 4) if (tables.blocked[b]! < size) reached[tables.blocked[b]!] = 1;
  const used = new Int32Array(size);
  for (let way = 0; way < tables.ways; way++) {
    const along = tables.wayAlong[way]!;
    const count = tables.sizeCount[tables.waySize[way]!]!;
    used.fill(0);
    for (let length = along; length < size; length++) {
      if (reached[length] === 0 && reached[length - along] === 1 && used[length - along]! < count) {
        reached[length] = 1;
        used[length] = used[length - along]! + 1;
      }
    }
  }
  return {
    atLeast: (length) => {
      let at = Math.max(0, length);
      while (at < size && reached[at] === 0) at++;
      return Math.max(at, length);
    },
    atMost: (length) => {
      let at = Math.min(length, size - 1);
      while (at > 0 && reached[at] === 0) at--;
      return at;
    },
    list: (most) => {
      const lengths: number[] = [];
      for (let at = 0; at < Math.min(size, most + 1); at++) if (reached[at] === 1) lengths.push(at);
      return Int32Array.from(lengths);
    },
  };
}

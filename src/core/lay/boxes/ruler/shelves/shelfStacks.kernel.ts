import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";

/** Best stacks for every column width and height; widths are the distinct extents across, ascending. */
export interface StackTable {
  readonly highest: number;
  readonly widths: Int32Array;
  /** Row per width, `highest` + 1 wide: worth of the best stack no wider and no higher. */
  readonly value: Float64Array;
  /** Row per part: whether it is taken at a height. A part is some copies of a way. */
  readonly taken: Uint8Array;
  readonly partWay: Int32Array;
  readonly partCopies: Int32Array;
  /** Parts of ways up to each width. */
  readonly partsUpTo: Int32Array;
  /** Whether a stack is one piece. */
  readonly single: boolean;
}

/** Copies of a way are split into parts of 1, 2, 4 … and a rest; so many are enough for any count of pieces. */
const PARTS_PER_WAY = 16;

/** Memory for columns up to `highest` high, of one piece each or of any number. */
export function stackTable(tables: SearchTables, highest: number, single: boolean): StackTable {
  const widths = Int32Array.from(new Set(tables.acrossSorted));
  const parts = tables.ways * PARTS_PER_WAY;
  return {
    highest,
    widths,
    value: new Float64Array(widths.length * (highest + 1)),
    taken: new Uint8Array(parts * (highest + 1)),
    partWay: new Int32Array(parts),
    partCopies: new Int32Array(parts),
    partsUpTo: new Int32Array(widths.length),
    single,
  };
}

/**
 * Fills the table up to a height: the most valuable stack of the pieces left for every width and height at once, by one bounded
 * knapsack over the height whose pieces come in order of width. The two ways of a size are counted apart.
 * Returns the work done. O(highest · Σ log left).
 */
export function fillStacks(
  tables: SearchTables,
  left: Int32Array,
  worth: Float64Array,
  table: StackTable,
  upTo: number = table.highest,
): number {
  const { waysByAcross, wayAcross, wayAlong, waySize, ways } = tables;
  const { highest, widths, value, taken, partWay, partCopies, partsUpTo, single } = table;
  const row = highest + 1;
  let parts = 0;
  let work = 0;
  let at = 0;
  for (let width = 0; width < widths.length; width++) {
    const from = width * row;
    if (width === 0) value.fill(0, 0, upTo + 1);
    else value.copyWithin(from, from - row, from - row + upTo + 1);
    for (; at < ways && wayAcross[waysByAcross[at]!]! <= widths[width]!; at++) {
      const way = waysByAcross[at]!;
      const along = wayAlong[way]!;
      const each = worth[waySize[way]!]!;
      let rest = Math.min(left[waySize[way]!]!, Math.floor(upTo / along), single ? 1 : Infinity);
      for (let copies = 1; rest > 0; copies *= 2) {
        const count = Math.min(copies, rest);
        rest -= count;
        const size = count * along;
        const gain = count * each;
        const partAt = parts * row;
        taken.fill(0, partAt, partAt + upTo + 1);
        for (let h = upTo; h >= size; h--) {
          const candidate = (single ? 0 : value[from + h - size]!) + gain;
          if (candidate > value[from + h]!) {
            value[from + h] = candidate;
            taken[partAt + h] = 1;
          }
        }
        work += upTo + 1;
        partWay[parts] = way;
        partCopies[parts] = count;
        parts++;
      }
    }
    partsUpTo[width] = parts;
  }
  return work;
}

/** Copies of each way in the best stack of a width (by index) and height, in `out`. */
export function readStack(
  tables: SearchTables,
  table: StackTable,
  width: number,
  height: number,
  out: Int32Array,
): void {
  const { highest, taken, partWay, partCopies, partsUpTo, single } = table;
  const row = highest + 1;
  out.fill(0);
  let h = height;
  for (let part = partsUpTo[width]! - 1; part >= 0; part--) {
    if (taken[part * row + h] === 0) continue;
    const way = partWay[part]!;
    out[way]! += partCopies[part]!;
    if (single) return;
    h -= partCopies[part]! * tables.wayAlong[way]!;
  }
}

import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";

/** Table entries times ways that are still worth it, as a table is made for every beam. */
const MOST_WORK = 2e6;

/**
 * For every extent 0 … limit the largest sum of piece extents not above it, with at most `counts[size]` extents
 * of a size (each way counted apart, which only adds sums). What lies beyond that sum in a free rectangle can
 * never be used. O(ways · limit); empty when that is too much, which stands for "every extent is usable".
 */
export function reachTable(
  tables: SearchTables,
  extents: Int32Array,
  counts: ArrayLike<number>,
  limit: number,
): Int32Array {
  if (tables.ways * limit > MOST_WORK) return new Int32Array(0);
  const reached = new Uint8Array(limit + 1);
  reached[0] = 1;
  const used = new Int32Array(limit + 1);
  for (let way = 0; way < tables.ways; way++) {
    const extent = extents[way]!;
    const count = counts[tables.waySize[way]!]!;
    if (count === 0) continue;
    used.fill(0);
    for (let sum = extent; sum <= limit; sum++) {
      if (reached[sum] === 0 && reached[sum - extent] === 1 && used[sum - extent]! < count) {
        reached[sum] = 1;
        used[sum] = used[sum - extent]! + 1;
      }
    }
  }
  const out = new Int32Array(limit + 1);
  for (let sum = 1; sum <= limit; sum++) out[sum] = reached[sum] === 1 ? sum : out[sum - 1]!;
  return out;
}

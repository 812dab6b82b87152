import type { Ring } from "../../../../geometry/ring.ts";

/**
 * Forbidden shifts along one horizontal line: disjoint open intervals `[lo0, hi0, lo1, hi1, …]`, rising.
 * Everything here is in whole grid units.
 */
export type Intervals = readonly number[];

/** Where the line y = `y` (never through a vertex) is inside the rings, moved right by `shift`. O(vertices). */
function cross(rings: readonly Ring[], y: number, shift: number): number[] {
  const xs: number[] = [];
  for (const ring of rings) {
    const n = ring.length;
    for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
      const yi = ring[i + 1]!;
      const yj = ring[j + 1]!;
      if (yi > y === yj > y) continue;
      xs.push(ring[i]! + ((ring[j]! - ring[i]!) * (y - yi)) / (yj - yi) + shift);
    }
  }
  return xs.sort((a, b) => a - b);
}

/**
 * Open interior of a no-fit polygon on the line y, moved right by `shift`: what is inside both just above and
 * just below the line, so that a shift along a horizontal edge counts as touching, which is allowed. Half a
 * unit to either side misses every vertex of a polygon on the grid.
 */
export function slice(rings: readonly Ring[], y: number, shift: number): number[] {
  const above = cross(rings, y + 0.5, shift);
  const below = cross(rings, y - 0.5, shift);
  const out: number[] = [];
  let i = 0;
  let j = 0;
  while (i + 1 < above.length && j + 1 < below.length) {
    const lo = Math.max(above[i]!, below[j]!);
    const hi = Math.min(above[i + 1]!, below[j + 1]!);
    if (hi - lo > 1) out.push(lo, hi);
    if (above[i + 1]! < below[j + 1]!) i += 2;
    else j += 2;
  }
  return out;
}

/** The union of intervals, rising and disjoint. */
export function merged(intervals: Intervals): number[] {
  const order: number[] = [];
  for (let i = 0; i < intervals.length; i += 2) order.push(i);
  order.sort((a, b) => intervals[a]! - intervals[b]!);
  const out: number[] = [];
  for (const i of order) {
    const lo = intervals[i]!;
    const hi = intervals[i + 1]!;
    const last = out.length - 1;
    if (last > 0 && lo <= out[last]! + 1) out[last] = Math.max(out[last]!, hi);
    else out.push(lo, hi);
  }
  return out;
}

/** Whether x lies strictly inside one of the intervals, by more than a unit. */
export function isForbidden(intervals: Intervals, x: number): boolean {
  for (let i = 0; i < intervals.length; i += 2) if (x > intervals[i]! + 1 && x < intervals[i + 1]! - 1) return true;
  return false;
}

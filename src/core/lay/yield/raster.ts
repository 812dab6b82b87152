/**
 * All sums `i·a + j·b ≤ limit`, ascending, from 0. Some best packing of a × b rectangles has every edge on such a
 * point (normal patterns: Herz 1972, IBM J. Res. Dev. 16; Christofides & Whitlock 1977, Oper. Res. 25).
 * O(p log p) for p points.
 */
export function normalPoints(a: number, b: number, limit: number): Float64Array {
  const points = new Set<number>();
  for (let x = 0; x <= limit; x += a) for (let y = x; y <= limit; y += b) points.add(y);
  return Float64Array.from(points).sort();
}

/** Index of the largest point ≤ `value`; `points` ascending from 0 and value ≥ 0. */
export function pointIndexAtMost(points: Float64Array, value: number): number {
  let low = 0;
  let high = points.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (points[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}

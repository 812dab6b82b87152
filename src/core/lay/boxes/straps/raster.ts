/** Most points, and most sums gone through for them: beyond, time and memory would run out. */
const MOST_POINTS = 3e6;

/**
 * All sums `i·a + j·b ≤ limit`, ascending, from 0. Some best packing of a × b rectangles has every edge on such a
 * point (normal patterns: Herz 1972, IBM J. Res. Dev. 16; Christofides & Whitlock 1977, Oper. Res. 25). Only the
 * multiples of either side when there are too many (`hasAllPoints`).
 * Units: whole numbers. Cost: O(p log p) for p sums, at most some millions.
 */
export function normalPoints(a: number, b: number, limit: number): Float64Array {
  const cells = limit / commonDivisor(a, b);
  if (cells < sums(a, b, limit) && cells <= MOST_POINTS) return reachedPoints(a, b, limit);
  const points = new Set<number>();
  const isAll = sums(a, b, limit) <= MOST_POINTS;
  for (let x = 0; x <= limit; x += a) {
    points.add(x);
    if (isAll) for (let y = x; y <= limit; y += b) points.add(y);
  }
  for (let y = 0; y <= limit; y += b) points.add(y);
  return Float64Array.from(points).sort();
}

/** Whether `normalPoints` are all the sums. */
export function hasAllPoints(a: number, b: number, limit: number): boolean {
  return Math.min(sums(a, b, limit), limit / commonDivisor(a, b)) <= MOST_POINTS;
}

/** How many sums there are at most, doubles counted. */
function sums(a: number, b: number, limit: number): number {
  return (limit / a + 1) * (limit / b + 1);
}

/** The same points from a table of the multiples of the sides' common divisor. */
function reachedPoints(a: number, b: number, limit: number): Float64Array {
  const unit = commonDivisor(a, b);
  const [stepA, stepB, last] = [a / unit, b / unit, Math.floor(limit / unit)];
  const reached = new Uint8Array(last + 1);
  reached[0] = 1;
  let count = 1;
  for (let i = Math.min(stepA, stepB); i <= last; i++) {
    if (reached[i - stepA] !== 1 && reached[i - stepB] !== 1) continue;
    reached[i] = 1;
    count++;
  }
  const points = new Float64Array(count);
  let at = 0;
  for (let i = 0; i <= last; i++) if (reached[i] === 1) points[at++] = i * unit;
  return points;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
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

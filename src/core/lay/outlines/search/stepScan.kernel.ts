/**
 * Hot loops of the scan: sums of depths over all places on whole steps, and the least of them.
 *
 * A sum is a table of places, columns one after the other; a depth table the same, of shifts between two pieces.
 */

/**
 * Adds `weight` times a depth table of `width` × `height` shifts, the first of which is place (`left`, `low`), to the
 * sums of `columns` × `rows` places, as far as both lie on each other.
 */
export function addShifted(
  sums: Float32Array,
  columns: number,
  rows: number,
  depths: Float32Array,
  width: number,
  height: number,
  left: number,
  low: number,
  weight: number,
): void {
  const fromX = Math.max(left, 0);
  const toX = Math.min(left + width, columns);
  const fromY = Math.max(low, 0);
  const toY = Math.min(low + height, rows);
  const count = toY - fromY;
  if (count <= 0) return;
  for (let x = fromX; x < toX; x++) {
    let s = x * rows + fromY;
    let d = (x - left) * height + (fromY - low);
    for (const end = s + count; s < end; s++, d++) sums[s]! += weight * depths[d]!;
  }
}

/** The least of the first `count` sums. */
export function leastSum(sums: Float32Array, count: number): number {
  let least = Infinity;
  for (let s = 0; s < count; s++) if (sums[s]! < least) least = sums[s]!;
  return least;
}

/** How many of the first `count` sums are `least`. */
export function countEqual(sums: Float32Array, count: number, least: number): number {
  let equal = 0;
  for (let s = 0; s < count; s++) if (sums[s] === least) equal++;
  return equal;
}

/** Where sum number `skip` (from 0) of those that are `least` stands; `count` when there are fewer. */
export function placeOfEqual(sums: Float32Array, count: number, least: number, skip: number): number {
  let left = skip;
  let s = 0;
  for (; s < count; s++) if (sums[s] === least && left-- === 0) break;
  return s;
}

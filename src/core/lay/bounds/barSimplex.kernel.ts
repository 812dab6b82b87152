/** A linear programme min c·x, A x = b, x ≥ 0 in revised form: dense inverse of the basis, columns added as found. */
export interface BarSimplex {
  readonly rows: number;
  /** Row-major inverse of the basis. */
  readonly inverse: Float64Array;
  /** Values of the basic variables. */
  readonly values: Float64Array;
  /** Column in the basis of each row. */
  readonly basis: Int32Array;
  /** Working column. */
  readonly direction: Float64Array;
}

/** Memory for `rows` rows. */
export function barSimplex(rows: number): BarSimplex {
  return {
    rows,
    inverse: new Float64Array(rows * rows),
    values: new Float64Array(rows),
    basis: new Int32Array(rows),
    direction: new Float64Array(rows),
  };
}

/**
 * Brings column `entering` (dense, `column`) into the basis. Returns false when nothing limits it. O(rows²).
 */
export function enterColumn(simplex: BarSimplex, column: Float64Array, entering: number): boolean {
  const { rows, inverse, values, basis, direction } = simplex;
  let leaving = -1;
  let ratio = Infinity;
  for (let i = 0; i < rows; i++) {
    let sum = 0;
    const row = i * rows;
    for (let j = 0; j < rows; j++) {
      const c = column[j]!;
      if (c !== 0) sum += inverse[row + j]! * c;
    }
    direction[i] = sum;
    if (sum > 1e-9) {
      const limit = values[i]! / sum;
      // Among near ties the larger pivot keeps the inverse accurate.
      if (limit < ratio - 1e-12 || (limit <= ratio + 1e-12 && sum > direction[leaving]!)) {
        ratio = Math.min(limit, ratio);
        leaving = i;
      }
    }
  }
  if (leaving < 0) return false;
  const pivot = direction[leaving]!;
  const pivotRow = leaving * rows;
  const step = values[leaving]! / pivot;
  for (let j = 0; j < rows; j++) inverse[pivotRow + j]! /= pivot;
  for (let i = 0; i < rows; i++) {
    const factor = direction[i]!;
    if (i === leaving || factor === 0) continue;
    const row = i * rows;
    for (let j = 0; j < rows; j++) inverse[row + j]! -= factor * inverse[pivotRow + j]!;
    values[i]! -= factor * step;
    if (values[i]! < 0) values[i] = 0;
  }
  values[leaving] = step;
  basis[leaving] = entering;
  return true;
}

/** Working memory for `bestPattern`. */
export interface KnapsackMemory {
  readonly value: Float64Array;
  readonly taken: Uint8Array;
  readonly itemOf: Int32Array;
  readonly copies: Int32Array;
}

/** For capacities up to `capacity` and at most `items` kinds. */
export function knapsackMemory(capacity: number, items: number): KnapsackMemory {
  const parts = items * 16;
  return {
    value: new Float64Array(capacity + 1),
    taken: new Uint8Array((capacity + 1) * parts),
    itemOf: new Int32Array(parts),
    copies: new Int32Array(parts),
  };
}

/**
 * Most valuable pattern: counts in `out` with Σ extent · count ≤ capacity and count ≤ most. Bounded knapsack by
 * binary splitting, O(capacity · Σ log most). Returns its value.
 */
export function bestPattern(
  extents: Int32Array,
  worth: Float64Array,
  most: Int32Array,
  capacity: number,
  memory: KnapsackMemory,
  out: Int32Array,
): number {
  const { value, taken, itemOf, copies } = memory;
  const items = extents.length;
  const row = capacity + 1;
  value.fill(0, 0, row);
  out.fill(0);
  let parts = 0;
  for (let item = 0; item < items; item++) {
    const extent = extents[item]!;
    if (worth[item]! <= 1e-12 || extent > capacity) continue;
    let rest = extent > 0 ? Math.min(most[item]!, Math.floor(capacity / extent)) : most[item]!;
    for (let chunk = 1; rest > 0; chunk *= 2) {
      const count = Math.min(chunk, rest);
      rest -= count;
      const size = count * extent;
      const gain = count * worth[item]!;
      const at = parts * row;
      taken.fill(0, at, at + row);
      for (let w = capacity; w >= size; w--) {
        const candidate = value[w - size]! + gain;
        if (candidate > value[w]!) {
          value[w] = candidate;
          taken[at + w] = 1;
        }
      }
      itemOf[parts] = item;
      copies[parts] = count;
      parts++;
    }
  }
  let w = capacity;
  for (let part = parts - 1; part >= 0; part--) {
    if (taken[part * row + w] === 0) continue;
    const item = itemOf[part]!;
    out[item]! += copies[part]!;
    w -= copies[part]! * extents[item]!;
  }
  return value[capacity]!;
}

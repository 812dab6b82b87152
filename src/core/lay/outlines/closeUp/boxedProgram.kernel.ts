/**
 * A linear program with boxed unknowns: least `cost · v` with `a · v ≥ b` for every row and `0 ≤ v ≤ range`, no cost
 * below 0. Rows are short (`WIDTH` entries at most), so only the inverse of the basis is dense.
 *
 * Method: dual simplex from v = 0, which is dual feasible because no cost is negative (C. E. Lemke 1954, from memory).
 * The basis holds one tight row or limit for each unknown.
 */
export const WIDTH = 5;

/** Reused from program to program; nothing is allocated once the arrays fit. */
export interface BoxedProgram {
  /** Unknowns and rows of this program. */
  size: number;
  rows: number;
  cost: Float64Array;
  range: Float64Array;
  /** Row r: unknowns `index[WIDTH·r …]` (−1 unused) with factors `factor[…]`, at least `least[r]`. */
  index: Int32Array;
  factor: Float64Array;
  least: Float64Array;
  /** The unknowns; the answer once `solveBoxed` returned 1. */
  v: Float64Array;
  inverse: Float64Array;
  multiplier: Float64Array;
  column: Float64Array;
  /** Steps of the inner loops so far. */
  work: number;
  /** Which entries of a row of the inverse are not 0. */
  nonzero: Int32Array;
}

/** A program with room for so many unknowns and rows. */
export function boxedProgram(size: number, rows: number): BoxedProgram {
  return {
    size,
    rows: 0,
    cost: new Float64Array(size),
    range: new Float64Array(size),
    index: new Int32Array(rows * WIDTH).fill(-1),
    factor: new Float64Array(rows * WIDTH),
    least: new Float64Array(rows),
    v: new Float64Array(size),
    inverse: new Float64Array(size * size),
    multiplier: new Float64Array(size),
    column: new Float64Array(size),
    work: 0,
    nonzero: new Int32Array(size),
  };
}

/** Puts the program at its start, v = 0. */
export function startBoxed(program: BoxedProgram): void {
  const { size, inverse, multiplier, cost, v } = program;
  inverse.fill(0, 0, size * size);
  for (let i = 0; i < size; i++) {
    inverse[i * size + i] = 1;
    multiplier[i] = cost[i]!;
    v[i] = 0;
  }
}

/** Goes on for at most `pivots` exchanges: 1 solved, 0 not yet, −1 no v keeps all rows. `tolerance` is in units of the rows. */
export function solveBoxed(program: BoxedProgram, pivots: number, tolerance: number): number {
  const { size, rows, index, factor, least, range, v, inverse, multiplier, column, nonzero } = program;
  for (let pivot = 0; pivot < pivots; pivot++) {
    // The most violated row or limit enters.
    let worst = tolerance;
    let row = -1;
    for (let r = 0; r < rows; r++) {
      const o = r * WIDTH;
      let lack = least[r]!;
      for (let k = o; k < o + WIDTH; k++) {
        const i = index[k]!;
        if (i < 0) break;
        lack -= factor[k]! * v[i]!;
      }
      if (lack > worst) {
        worst = lack;
        row = r;
      }
    }
    let limit = -1;
    let way = 1;
    for (let i = 0; i < size; i++) {
      const over = v[i]! - range[i]!;
      if (over > worst) {
        worst = over;
        limit = i;
        way = -1;
      }
      if (-v[i]! > worst) {
        worst = -v[i]!;
        limit = i;
        way = 1;
      }
    }
    if (row < 0 && limit < 0) return 1;
    if (limit >= 0) for (let i = 0; i < size; i++) column[i] = way * inverse[i * size + limit]!;
    else {
      column.fill(0);
      const o = row * WIDTH;
      for (let k = o; k < o + WIDTH; k++) {
        const j = index[k]!;
        if (j < 0) break;
        const f = factor[k]!;
        for (let i = 0; i < size; i++) column[i] = column[i]! + f * inverse[i * size + j]!;
      }
    }
    let leaving = -1;
    let step = Infinity;
    for (let i = 0; i < size; i++) {
      if (column[i]! <= 1e-9) continue;
      const ratio = multiplier[i]! / column[i]!;
      if (ratio < step - 1e-15 || (ratio <= step + 1e-15 && column[i]! > column[leaving]!)) {
        step = ratio;
        leaving = i;
      }
    }
    if (leaving < 0) return -1;
    const scale = 1 / column[leaving]!;
    const p = leaving * size;
    // Most of the inverse is 0: a copy answers to few others.
    let filled = 0;
    for (let j = 0; j < size; j++) {
      if (inverse[p + j] === 0) continue;
      const value = inverse[p + j]! * scale;
      inverse[p + j] = value;
      v[j] = v[j]! + worst * value;
      nonzero[filled++] = j;
    }
    let work = rows + 4 * size;
    for (let i = 0; i < size; i++) {
      const f = column[i]!;
      if (i === leaving || f === 0) continue;
      work += filled;
      const o = i * size;
      for (let k = 0; k < filled; k++) {
        const j = nonzero[k]!;
        inverse[o + j] = inverse[o + j]! - f * inverse[p + j]!;
      }
      multiplier[i] = Math.max(0, multiplier[i]! - step * f);
    }
    multiplier[leaving] = step;
    program.work += work;
  }
  return 0;
}

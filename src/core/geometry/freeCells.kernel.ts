/**
 * Marks in `out` every cell of a grid that an outline touches: `out[row * columns + column] = 1`. Rings are walked
 * even-odd, so an outside with holes, or a frame with an opening, is one call.
 *
 * Shapes: `points` [x0, y0, x1, y1, …] of all rings one after another, `ends` the index after each ring's last point;
 *         `xs` and `ys` the lines between columns and rows, rising. Units: mm.
 * Cost:   O(points × rows an edge spans + cells marked).
 */
export function markTouched(
  points: Float64Array,
  ends: Int32Array,
  xs: Float64Array,
  ys: Float64Array,
  crossings: Float64Array,
  out: Uint8Array,
): void {
  for (let row = 0; row + 1 < ys.length; row++) {
    const low = ys[row]!;
    const high = ys[row + 1]!;
    markEdges(points, ends, low, high, xs, row, out);
    // Going up from a place inside, one meets an edge in the same column or the row's upper line.
    markInside(points, ends, high, xs, row, crossings, out);
  }
}

/** Cells of one row that an edge runs through. */
function markEdges(
  points: Float64Array,
  ends: Int32Array,
  low: number,
  high: number,
  xs: Float64Array,
  row: number,
  out: Uint8Array,
): void {
  let start = 0;
  for (let ring = 0; ring < ends.length; ring++) {
    const end = ends[ring]!;
    let px = points[end - 2]!;
    let py = points[end - 1]!;
    for (let i = start; i < end; i += 2) {
      const x = points[i]!;
      const y = points[i + 1]!;
      const bottom = Math.min(py, y);
      const top = Math.max(py, y);
      if (top >= low && bottom <= high) {
        let a = px;
        let b = x;
        if (top > bottom) {
          const slope = (x - px) / (y - py);
          const yFrom = Math.min(Math.max(py, low), high);
          const yTo = Math.min(Math.max(y, low), high);
          a = px + (yFrom - py) * slope;
          b = px + (yTo - py) * slope;
        }
        markSpan(Math.min(a, b), Math.max(a, b), xs, row, out);
      }
      px = x;
      py = y;
    }
    start = end;
  }
}

/** Cells of one row between pairs of crossings with the line at height `level`. */
function markInside(
  points: Float64Array,
  ends: Int32Array,
  level: number,
  xs: Float64Array,
  row: number,
  crossings: Float64Array,
  out: Uint8Array,
): void {
  let count = 0;
  let start = 0;
  for (let ring = 0; ring < ends.length; ring++) {
    const end = ends[ring]!;
    let px = points[end - 2]!;
    let py = points[end - 1]!;
    for (let i = start; i < end; i += 2) {
      const x = points[i]!;
      const y = points[i + 1]!;
      if (py > level !== y > level) {
        const at = px + ((level - py) * (x - px)) / (y - py);
        let k = count++;
        while (k > 0 && crossings[k - 1]! > at) {
          crossings[k] = crossings[k - 1]!;
          k--;
        }
        crossings[k] = at;
      }
      px = x;
      py = y;
    }
    start = end;
  }
  for (let k = 0; k + 1 < count; k += 2) markSpan(crossings[k]!, crossings[k + 1]!, xs, row, out);
}

function markSpan(from: number, to: number, xs: Float64Array, row: number, out: Uint8Array): void {
  const columns = xs.length - 1;
  const first = columnAt(xs, from);
  const last = columnAt(xs, to);
  for (let column = first; column <= last; column++) out[row * columns + column] = 1;
}

/** The column that `x` lies in, on a line the one that follows; the first or last one beyond them. */
function columnAt(xs: Float64Array, x: number): number {
  let low = 0;
  let high = xs.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (xs[middle]! <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * The largest rectangle of cells that are 0, no side shorter than `leastSide`: [column, row, columns, rows] in `out`,
 * all 0 when there is none. Of equal ones the lowest, then the one that ends lowest, then the leftmost. O(cells).
 *
 * Source: largest rectangle under a histogram, row by row (textbook stack algorithm), for columns and rows of any size.
 */
export function largestFree(
  blocked: Uint8Array,
  xs: Float64Array,
  ys: Float64Array,
  leastSide: number,
  from: Int32Array,
  stack: Int32Array,
  out: Int32Array,
): void {
  const columns = xs.length - 1;
  // For each column the row that its free cells start in, down from the row looked at.
  from.fill(0);
  out.fill(0);
  let best = 0;
  for (let row = 0; row + 1 < ys.length; row++) {
    const top = ys[row + 1]!;
    let depth = 0;
    for (let column = 0; column <= columns; column++) {
      if (column < columns && blocked[row * columns + column] !== 0) from[column] = row + 1;
      const start = column < columns ? from[column]! : row + 1;
      while (depth > 0 && from[stack[depth - 1]!]! <= start) {
        const low = from[stack[--depth]!]!;
        if (low > row) continue;
        const left = depth === 0 ? 0 : stack[depth - 1]! + 1;
        const wide = xs[column]! - xs[left]!;
        const tall = top - ys[low]!;
        if (wide < leastSide || tall < leastSide || wide * tall < best) continue;
        // Rows come from below and columns from the left: of equal ones that start alike the first stays.
        if (wide * tall === best && low >= out[1]!) continue;
        best = wide * tall;
        out[0] = left;
        out[1] = low;
        out[2] = column - left;
        out[3] = row + 1 - low;
      }
      if (column < columns) stack[depth++] = column;
    }
  }
}

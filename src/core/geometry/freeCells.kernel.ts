/**
 * Marks in `out` every cell of a grid that an outline touches: `out[row * columns + column] = 1`. Rings are walked
 * even-odd, so an outside with holes, or a frame with an opening, is one call.
 *
 * Shapes: `points` [x0, y0, x1, y1, …] of all rings one after another, `ends` the index after each ring's last point;
 *         the grid starts at (0, 0). Units: mm.
 * Cost:   O(points × rows an edge spans + cells marked).
 */
export function markTouched(
  points: Float64Array,
  ends: Int32Array,
  cell: number,
  columns: number,
  rows: number,
  crossings: Float64Array,
  out: Uint8Array,
): void {
  for (let row = 0; row < rows; row++) {
    const low = row * cell;
    const high = low + cell;
    markEdges(points, ends, low, high, cell, columns, row, out);
    // What lies inside between two edges crosses the row's lower or upper line.
    markInside(points, ends, low, cell, columns, row, crossings, out);
    markInside(points, ends, high, cell, columns, row, crossings, out);
  }
}

/** Cells of one row that an edge runs through. */
function markEdges(
  points: Float64Array,
  ends: Int32Array,
  low: number,
  high: number,
  cell: number,
  columns: number,
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
        markSpan(Math.min(a, b), Math.max(a, b), cell, columns, row, out);
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
  cell: number,
  columns: number,
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
  for (let k = 0; k + 1 < count; k += 2) markSpan(crossings[k]!, crossings[k + 1]!, cell, columns, row, out);
}

function markSpan(from: number, to: number, cell: number, columns: number, row: number, out: Uint8Array): void {
  const first = Math.max(0, Math.floor(from / cell));
  const last = Math.min(columns - 1, Math.floor(to / cell));
  for (let column = first; column <= last; column++) out[row * columns + column] = 1;
}

/**
 * The largest rectangle of cells that are 0, at least `least` cells on either side: [column, row, columns, rows] in
 * `out`, all 0 when there is none. Heights over each row, a stack of rising ones; O(cells).
 *
 * Source: largest rectangle under a histogram, row by row (textbook stack algorithm).
 */
export function largestFree(
  blocked: Uint8Array,
  columns: number,
  rows: number,
  least: number,
  heights: Int32Array,
  stack: Int32Array,
  out: Int32Array,
): void {
  heights.fill(0);
  out.fill(0);
  let best = 0;
  for (let row = 0; row < rows; row++) {
    let depth = 0;
    for (let column = 0; column <= columns; column++) {
      let height = 0;
      if (column < columns) {
        height = blocked[row * columns + column] === 0 ? heights[column]! + 1 : 0;
        heights[column] = height;
      }
      while (depth > 0 && heights[stack[depth - 1]!]! >= height) {
        const tall = heights[stack[--depth]!]!;
        const left = depth === 0 ? 0 : stack[depth - 1]! + 1;
        const wide = column - left;
        if (wide >= least && tall >= least && wide * tall > best) {
          best = wide * tall;
          out[0] = left;
          out[1] = row - tall + 1;
          out[2] = wide;
          out[3] = tall;
        }
      }
      if (column < columns) stack[depth++] = column;
    }
  }
}

import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";

/** Grid columns of a row at most; wider rolls are filled on a coarser grid, sizes rounded up. */
const MOST_COLUMNS = 1024;

/** Working memory and result of `fillRows`; make one per search with `rowFillBuffers`. */
export interface RowFillBuffers {
  /** Units per grid column. */
  readonly column: number;
  readonly segAcross: Int32Array;
  readonly segAlong: Int32Array;
  /** Row of the piece whose end is the segment, −1 for the roll's. */
  readonly segRow: Int32Array;
  readonly left: Int32Array;
  /** Knapsack over the columns of the row: worth of the best fill, and the piece put in last at each stage. */
  readonly value: Float64Array;
  readonly taken: Int8Array;
  readonly candidateSize: Int32Array;
  /** Ways of the row being filled, in the order of their places. */
  readonly row: Int32Array;
  readonly outWay: Int32Array;
  readonly outAlong: Int32Array;
  readonly outAcross: Int32Array;
  /** Row in which each placed piece lies. */
  readonly outRow: Int32Array;
  /** Cloth that each row left unused, square units. */
  readonly rowWaste: Float64Array;
  readonly rowArea: Float64Array;
  /** [pieces placed, furthest end, rows, work]. */
  readonly result: Int32Array;
}

/** Buffers for jobs of the table's size. */
export function rowFillBuffers(tables: SearchTables): RowFillBuffers {
  const n = tables.pieces;
  const column = Math.max(1, Math.ceil(tables.width / MOST_COLUMNS));
  const columns = Math.floor(tables.width / column) + 1;
  return {
    column,
    segAcross: new Int32Array(n + 4),
    segAlong: new Int32Array(n + 4),
    segRow: new Int32Array(n + 4),
    left: new Int32Array(tables.sizes),
    value: new Float64Array(columns),
    taken: new Int8Array((n + 1) * columns),
    candidateSize: new Int32Array(n + 1),
    row: new Int32Array(n),
    outWay: new Int32Array(n),
    outAlong: new Int32Array(n),
    outAcross: new Int32Array(n),
    outRow: new Int32Array(n),
    rowWaste: new Float64Array(2 * n + 2),
    rowArea: new Float64Array(2 * n + 2),
    result: new Int32Array(4),
  };
}

/**
 * Lays all pieces row by row: the lowest, then leftmost segment of the skyline takes the set of pieces worth most
 * that fit side by side on it (a bounded knapsack over its width), the tallest beside the higher wall; a segment on
 * which nothing fits is raised to its lower neighbour. Stops once a piece would end beyond `cap` for want of room.
 * Returns whether all pieces lie. O(pieces · sizes · columns).
 *
 * The fill by worth is that of sequential value correction (G. Belov, G. Scheithauer & E. A. Mukhacheva 2008).
 */
export function fillRows(tables: SearchTables, worth: Float64Array, cap: number, out: RowFillBuffers): boolean {
  const { sizes, sizeFirstWay, sizeSecondWay, sizeCount, wayAcross, wayAlong, width, pieces } = tables;
  const { column, segAcross, segAlong, segRow, left, value, taken, candidateSize, row } = out;
  const { outWay, outAlong, outAcross, outRow, rowWaste, rowArea, result } = out;
  left.set(sizeCount);
  segAcross[0] = 0;
  segAcross[1] = width;
  segAlong[0] = 0;
  segRow[0] = -1;
  let m = 1;
  let placed = 0;
  let rows = 0;
  let furthest = 0;
  let work = 0;
  let spare = cap * width - tables.area;
  while (placed < pieces) {
    let at = 0;
    for (let i = 1; i < m; i++) if (segAlong[i]! < segAlong[at]!) at = i;
    const base = segAlong[at]!;
    const start = segAcross[at]!;
    const gap = segAcross[at + 1]! - start;
    const room = cap - base;
    const wallLeft = at > 0 ? segAlong[at - 1]! : 0x3fffffff;
    const wallRight = at + 1 < m ? segAlong[at + 1]! : 0x3fffffff;
    // Knapsack over the columns; one stage for each copy that may still lie here.
    const columns = Math.floor(gap / column);
    value.fill(0, 0, columns + 1);
    let stages = 0;
    for (let size = 0; size < sizes; size++) {
      if (left[size] === 0) continue;
      const first = sizeFirstWay[size]!;
      const second = sizeSecondWay[size]!;
      const one = wayAlong[first]! <= room ? Math.ceil(wayAcross[first]! / column) : columns + 1;
      const two = second >= 0 && wayAlong[second]! <= room ? Math.ceil(wayAcross[second]! / column) : columns + 1;
      const narrow = Math.min(one, two);
      if (narrow > columns) continue;
      let copies = Math.floor(columns / narrow);
      if (copies > left[size]!) copies = left[size]!;
      const gainOne = worth[first]!;
      const gainTwo = second >= 0 ? worth[second]! : 0;
      for (; copies > 0; copies--) {
        const from = stages * (columns + 1);
        for (let c = columns; c >= narrow; c--) {
          let best = value[c]!;
          let way = 0;
          if (c >= one && value[c - one]! + gainOne > best) {
            best = value[c - one]! + gainOne;
            way = 1;
          }
          if (c >= two && value[c - two]! + gainTwo > best) {
            best = value[c - two]! + gainTwo;
            way = 2;
          }
          value[c] = best;
          taken[from + c] = way;
        }
        for (let c = 0; c < narrow; c++) taken[from + c] = 0;
        work += columns;
        candidateSize[stages++] = size;
      }
    }
    let count = 0;
    let filled = 0;
    for (let stage = stages - 1, c = columns; stage >= 0; stage--) {
      const way = taken[stage * (columns + 1) + c]!;
      if (way === 0) continue;
      const size = candidateSize[stage]!;
      const chosen = way === 1 ? sizeFirstWay[size]! : sizeSecondWay[size]!;
      c -= Math.ceil(wayAcross[chosen]! / column);
      left[size]!--;
      filled += wayAcross[chosen]!;
      // Tallest first.
      let k = count++;
      for (; k > 0 && wayAlong[row[k - 1]!]! < wayAlong[chosen]!; k--) row[k] = row[k - 1]!;
      row[k] = chosen;
    }
    if (count === 0) {
      if (m === 1) break;
      const rise = Math.min(wallLeft, wallRight);
      spare -= (rise - base) * gap;
      if (spare < 0) break;
      if (segRow[at]! >= 0) rowWaste[segRow[at]!]! += (rise - base) * gap;
      segAlong[at] = rise;
      if (at + 1 < m && segAlong[at + 1] === rise) m = drop(segAcross, segAlong, segRow, m, at + 1);
      if (at > 0 && segAlong[at - 1] === rise) m = drop(segAcross, segAlong, segRow, m, at);
      continue;
    }
    const atLeft = wallLeft >= wallRight;
    const rest = gap - filled;
    rowWaste[rows] = 0;
    rowArea[rows] = 0;
    // Make room for the row's segments: count pieces and, when something is left over, the rest.
    const parts = count + (rest > 0 ? 1 : 0);
    for (let i = m; i > at; i--) {
      segAcross[i + parts - 1] = segAcross[i]!;
      segAlong[i + parts - 1] = segAlong[i]!;
      segRow[i + parts - 1] = segRow[i]!;
    }
    m += parts - 1;
    let x = start;
    for (let part = 0; part < parts; part++) {
      const k = atLeft ? part : parts - 1 - part;
      segAcross[at + part] = x;
      if (k === count) {
        segAlong[at + part] = base;
        segRow[at + part] = rows;
        x += rest;
        continue;
      }
      const way = row[k]!;
      outWay[placed] = way;
      outAlong[placed] = base;
      outAcross[placed] = x;
      outRow[placed++] = rows;
      const end = base + wayAlong[way]!;
      segAlong[at + part] = end;
      segRow[at + part] = rows;
      if (end > furthest) furthest = end;
      rowArea[rows]! += wayAcross[way]! * wayAlong[way]!;
      x += wayAcross[way]!;
    }
    rows++;
    for (let i = m - 1; i > 0; i--)
      if (segAlong[i] === segAlong[i - 1]) m = drop(segAcross, segAlong, segRow, m, i);
  }
  result[0] = placed;
  result[1] = furthest;
  result[2] = rows;
  result[3] = work;
  return placed === pieces;
}

function drop(segAcross: Int32Array, segAlong: Int32Array, segRow: Int32Array, m: number, at: number): number {
  for (let i = at; i < m; i++) {
    segAcross[i] = segAcross[i + 1]!;
    segAlong[i] = segAlong[i + 1]!;
    segRow[i] = segRow[i + 1]!;
  }
  return m - 1;
}

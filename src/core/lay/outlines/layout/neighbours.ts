import { ROW, ROW_INTS, weightedDepth } from "../noFit/depth.kernel.ts";
import { writeRow } from "./neighbourRow.ts";
import type { WorkLayout } from "./workLayout.ts";

/** Strips across the window in which neighbours are gathered, so that a sample asks only those near it. */
const BINS = 16;
const BINS_FROM = 12;

/**
 * Everything one copy in one variant could run into, as rows for the depth kernel. Nothing is allocated once the arrays
 * fit.
 */
export class Neighbours {
  rows: Float64Array;
  ints: Int32Array;
  /** Column of the layout each row stands for. */
  column: Int32Array;
  /** Number of the feature grid of each row. */
  grid: Int32Array;
  count = 0;
  private pick: Int32Array;
  private readonly binCount = new Int32Array(BINS);
  private binned = false;
  private binMin = 0;
  private binsPerUnit = 0;
  /** x, y, limit and result of the last question to the depth kernel. */
  readonly probe: Float64Array = new Float64Array(4);

  constructor(columns: number) {
    this.rows = new Float64Array(columns * ROW);
    this.ints = new Int32Array(columns * ROW_INTS);
    this.column = new Int32Array(columns);
    this.grid = new Int32Array(columns);
    this.pick = new Int32Array(columns * (BINS + 1));
    for (let k = 0; k < columns; k++) this.pick[k] = k;
  }

  /**
   * Rows for all that is laid, seen from copy `item` turned as `variant`; with `apart`, only for copies and obstacles
   * whose boxes come within that distance of the copy's box as it lies.
   */
  fill(state: WorkLayout, item: number, variant: number, apart: number = Infinity): void {
    const { spots, order, count: items, columns } = state;
    const { variants } = state.job;
    const own = variants[variant]!;
    const lowX = spots.x[item]! + own.minX - apart;
    const highX = spots.x[item]! + own.maxX + apart;
    const lowY = spots.y[item]! + own.minY - apart;
    const highY = spots.y[item]! + own.maxY + apart;
    let count = 0;
    for (let p = 0; p < columns; p++) {
      const j = order[p]!;
      if (j === item || (j < items && spots.variant[j]! < 0)) continue;
      if (apart < Infinity) {
        const other = j < items ? variants[spots.variant[j]!]! : state.obstacleBoxes[j - items]!;
        const x = j < items ? spots.x[j]! : 0;
        const y = j < items ? spots.y[j]! : 0;
        if (x + other.minX > highX || x + other.maxX < lowX || y + other.minY > highY || y + other.maxY < lowY)
          continue;
      }
      const grid = writeRow(state, variant, j, 1, this.rows, this.ints, count);
      if (grid < 0) continue;
      this.column[count] = j;
      this.grid[count] = grid;
      count++;
    }
    this.count = count;
    this.binned = false;
  }

  /** Gathers the rows by x for many samples over minX … maxX. */
  bin(minX: number, maxX: number): void {
    if (this.count < BINS_FROM || !(maxX > minX) || maxX === Infinity) return;
    const { rows, pick, binCount, count } = this;
    const width = this.column.length;
    const scale = BINS / (maxX - minX);
    binCount.fill(0);
    for (let k = 0; k < count; k++) {
      const o = k * ROW;
      const from = Math.max(0, Math.floor((rows[o]! - minX) * scale));
      const to = Math.min(BINS - 1, Math.floor((rows[o + 1]! - minX) * scale));
      for (let b = from; b <= to; b++) pick[(b + 1) * width + binCount[b]!++] = k;
    }
    this.binned = true;
    this.binMin = minX;
    this.binsPerUnit = scale;
  }

  /** Overlap at (x, y); stops once it reaches `limit`. */
  depthAt(state: WorkLayout, x: number, y: number, limit: number): number {
    const { arena } = state.store;
    state.evaluations++;
    let from = 0;
    let to = this.count;
    if (this.binned) {
      let b = ((x - this.binMin) * this.binsPerUnit) | 0;
      if (b < 0) b = 0;
      else if (b >= BINS) b = BINS - 1;
      from = (b + 1) * this.column.length;
      to = from + this.binCount[b]!;
    }
    const { probe } = this;
    probe[0] = x;
    probe[1] = y;
    probe[2] = limit;
    probe[3] = 0;
    weightedDepth(probe, this.rows, this.ints, this.pick, from, to, arena);
    return probe[3]!;
  }

  /** Depth at (x, y) against row `k` alone. */
  depthOf(state: WorkLayout, k: number, x: number, y: number): number {
    const o = k * ROW;
    const { rows } = this;
    if (x <= rows[o]! || x >= rows[o + 1]! || y <= rows[o + 2]! || y >= rows[o + 3]!) return 0;
    const { arena } = state.store;
    const { probe } = this;
    probe[0] = x;
    probe[1] = y;
    probe[2] = Infinity;
    probe[3] = 0;
    weightedDepth(probe, rows, this.ints, this.pick, k, k + 1, arena);
    return probe[3]!;
  }
}

import type { Rng } from "../rng.ts";
import { EDGE, ROW, ROW_INTS, weightedDepth } from "./depth.kernel.ts";
import { HEAD } from "./featureGrid.ts";
import type { LayState } from "./layState.ts";

/** Strips across the window in which neighbours are gathered, so that a sample asks only those near it. */
const BINS = 16;
const BINS_FROM = 12;

/**
 * Everything one copy in one variant could run into, as rows for the depth kernel. Filled anew for each search
 * of a copy; nothing is allocated once the arrays fit.
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

  /** Rows for all that is laid, seen from copy `item` turned as `variant`. `weighted` uses the pair weights. */
  fill(state: LayState, item: number, variant: number, weighted: boolean): void {
    const { job, store, spots, order, count: items, columns, gravity } = state;
    const { rows, ints, column } = this;
    const moving = job.variants[variant]!;
    const touch = state.touch();
    let count = 0;
    for (let p = 0; p < columns; p++) {
      const j = order[p]!;
      if (j === item) continue;
      const o = count * ROW;
      let grid: number;
      if (j < items) {
        const at = spots.variant[j]!;
        if (at < 0) continue;
        const fixed = job.variants[at]!;
        const x = spots.x[j]!;
        const y = spots.y[j]!;
        grid = store.pairGrid(fixed, moving);
        rows[o] = x + fixed.minX - moving.maxX;
        rows[o + 1] = x + fixed.maxX - moving.minX;
        rows[o + 2] = y + fixed.minY - moving.maxY;
        rows[o + 3] = y + fixed.maxY - moving.minY;
        rows[o + 4] = x;
        rows[o + 5] = y;
        const swapped = fixed.shape > moving.shape;
        const base = swapped ? moving : fixed;
        const sign = swapped ? -1 : 1;
        rows[o + 6] = sign * base.flip * base.cos;
        rows[o + 7] = sign * base.flip * base.sin;
        rows[o + 8] = -sign * base.sin;
        rows[o + 9] = sign * base.cos;
      } else {
        grid = store.obstacleGrid(j - items, variant);
        if (grid < 0) continue;
        const obstacle = job.obstacles[j - items]!;
        const head = grid * HEAD;
        const { heads } = store.arena;
        const side = heads[head + 4]!;
        rows[o] = obstacle.x + heads[head]!;
        rows[o + 1] = obstacle.x + heads[head]! + side / heads[head + 2]!;
        rows[o + 2] = obstacle.y + heads[head + 1]!;
        rows[o + 3] = obstacle.y + heads[head + 1]! + side / heads[head + 3]!;
        rows[o + 4] = obstacle.x;
        rows[o + 5] = obstacle.y;
        rows[o + 6] = 1;
        rows[o + 7] = 0;
        rows[o + 8] = 0;
        rows[o + 9] = 1;
      }
      rows[o + 10] = weighted ? state.weight[item * columns + j]! * gravity[item]! * gravity[j]! : 1;
      rows[o + 11] = touch;
      const head = grid * HEAD;
      const { heads } = store.arena;
      rows[o + 12] = heads[head]!;
      rows[o + 13] = heads[head + 1]!;
      rows[o + 14] = heads[head + 2]!;
      rows[o + 15] = heads[head + 3]!;
      ints[count * 2] = heads[head + 5]!;
      ints[count * 2 + 1] = heads[head + 4]!;
      column[count] = j;
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

  /** Keeps of `all` the rows that reach into the box. */
  narrow(all: Neighbours, minX: number, maxX: number, minY: number, maxY: number): void {
    const from = all.rows;
    let count = 0;
    for (let k = 0; k < all.count; k++) {
      const o = k * ROW;
      if (maxX <= from[o]! || minX >= from[o + 1]! || maxY <= from[o + 2]! || minY >= from[o + 3]!) continue;
      const to = count * ROW;
      for (let i = 0; i < ROW; i++) this.rows[to + i] = from[o + i]!;
      this.ints[count * 2] = all.ints[k * 2]!;
      this.ints[count * 2 + 1] = all.ints[k * 2 + 1]!;
      this.column[count] = all.column[k]!;
      this.grid[count] = all.grid[k]!;
      count++;
    }
    this.count = count;
    this.binned = false;
  }

  /** A random corner of a random neighbour's no-fit polygon, in the region, into `out`. */
  randomCorner(state: LayState, rng: Rng, out: Float64Array): void {
    const k = rng.below(this.count);
    const { edges, heads } = state.store.arena;
    const head = this.grid[k]! * HEAD;
    const e = (heads[head + 6]! + rng.below(heads[head + 7]!)) * EDGE;
    const lx = edges[e]!;
    const ly = edges[e + 1]!;
    const o = k * ROW;
    const { rows } = this;
    out[0] = rows[o + 4]! + rows[o + 6]! * lx + rows[o + 8]! * ly;
    out[1] = rows[o + 5]! + rows[o + 7]! * lx + rows[o + 9]! * ly;
  }

  /** Weighted overlap at (x, y); stops once it reaches `limit`. */
  depthAt(state: LayState, x: number, y: number, limit: number): number {
    const { cells, lists, edges } = state.store.arena;
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
    weightedDepth(probe, this.rows, this.ints, this.pick, from, to, cells, lists, edges);
    return probe[3]!;
  }

  /** Depth at (x, y) against row `k` alone, its weight taken off. */
  depthOf(state: LayState, k: number, x: number, y: number): number {
    const o = k * ROW;
    const { rows } = this;
    if (x <= rows[o]! || x >= rows[o + 1]! || y <= rows[o + 2]! || y >= rows[o + 3]!) return 0;
    const { cells, lists, edges } = state.store.arena;
    const { probe } = this;
    probe[0] = x;
    probe[1] = y;
    probe[2] = Infinity;
    weightedDepth(probe, rows, this.ints, this.pick, k, k + 1, cells, lists, edges);
    return probe[3]! / rows[o + 10]!;
  }
}

import { ROW } from "../noFit/depth.kernel.ts";
import { type GridArena, HEAD } from "../noFit/gridArena.ts";
import type { WorkLayout } from "./workLayout.ts";

/**
 * Writes row `k` for the depth kernel: what a copy in variant `moving` meets in one in variant `fixed` at (x, y), its
 * depth to count `weight` times. Builds the no-fit polygon when it is new. Returns the number of its feature grid.
 */
export function writePairRow(
  { job, store }: WorkLayout,
  moving: number,
  fixed: number,
  x: number,
  y: number,
  weight: number,
  rows: Float64Array,
  ints: Int32Array,
  k: number,
): number {
  const own = job.variants[moving]!;
  const rest = job.variants[fixed]!;
  const shape = job.shapes[own.shape]!;
  const o = k * ROW;
  const grid = store.pairGrid(rest, own);
  const touch = Math.min(shape.touch, job.shapes[rest.shape]!.touch);
  // Outlines for sums are grown past their boxes: boxes that touch must not lie in each other by a rounding.
  const slack = shape.detail === null ? 0 : touch;
  rows[o] = x + rest.minX - own.maxX + slack;
  rows[o + 1] = x + rest.maxX - own.minX - slack;
  rows[o + 2] = y + rest.minY - own.maxY + slack;
  rows[o + 3] = y + rest.maxY - own.minY - slack;
  rows[o + 4] = x;
  rows[o + 5] = y;
  const swapped = rest.shape > own.shape;
  const base = swapped ? own : rest;
  const sign = swapped ? -1 : 1;
  rows[o + 6] = sign * base.flip * base.cos;
  rows[o + 7] = sign * base.flip * base.sin;
  rows[o + 8] = -sign * base.sin;
  rows[o + 9] = sign * base.cos;
  rows[o + 10] = weight;
  rows[o + 11] = touch;
  writeGrid(store.arena, grid, rows, ints, k);
  return grid;
}

/** The part of row `k` that says where its feature grid lies. */
function writeGrid({ heads }: GridArena, grid: number, rows: Float64Array, ints: Int32Array, k: number): void {
  const o = k * ROW;
  const head = grid * HEAD;
  rows[o + 12] = heads[head]!;
  rows[o + 13] = heads[head + 1]!;
  rows[o + 14] = heads[head + 2]!;
  rows[o + 15] = heads[head + 3]!;
  ints[k * 3] = heads[head + 5]!;
  ints[k * 3 + 1] = heads[head + 4]!;
  ints[k * 3 + 2] = grid;
}

/**
 * The same for column `j` of the layout, a laid copy or an obstacle. Returns −2 (and a row that is met nowhere) for a
 * frame that leaves no room.
 */
export function writeRow(
  state: WorkLayout,
  variant: number,
  j: number,
  weight: number,
  rows: Float64Array,
  ints: Int32Array,
  k: number,
): number {
  const { job, store, spots, count: items } = state;
  if (j < items)
    return writePairRow(state, variant, spots.variant[j]!, spots.x[j]!, spots.y[j]!, weight, rows, ints, k);
  const o = k * ROW;
  const shape = job.shapes[job.variants[variant]!.shape]!;
  const grid = store.obstacleGrid(j - items, variant);
  if (grid < 0) {
    rows[o] = Infinity;
    return grid;
  }
  const obstacle = job.obstacles[j - items]!;
  const { heads } = store.arena;
  const head = grid * HEAD;
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
  rows[o + 10] = weight;
  rows[o + 11] = obstacle.isEdge ? shape.atEdge.touch : shape.touch;
  writeGrid(store.arena, grid, rows, ints, k);
  return grid;
}

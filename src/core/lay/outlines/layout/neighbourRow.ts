import { ROW } from "../noFit/depth.kernel.ts";
import { HEAD } from "../noFit/gridArena.ts";
import type { WorkLayout } from "./workLayout.ts";

/**
 * Writes row `k` for the depth kernel: what a copy in `variant` meets in column `j` of the layout, a laid copy or an
 * obstacle, its depth to count `weight` times. Builds the no-fit polygon when it is new. Returns the number of its
 * feature grid; −2 (and a row that is met nowhere) for a frame that leaves no room.
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
  const moving = job.variants[variant]!;
  const o = k * ROW;
  const shape = job.shapes[moving.shape]!;
  let { touch } = shape;
  let grid: number;
  if (j < items) {
    const fixed = job.variants[spots.variant[j]!]!;
    const x = spots.x[j]!;
    const y = spots.y[j]!;
    grid = store.pairGrid(fixed, moving);
    touch = Math.min(touch, job.shapes[fixed.shape]!.touch);
    // Outlines for sums are grown past their boxes: boxes that touch must not lie in each other by a rounding.
    const slack = shape.detail === null ? 0 : touch;
    rows[o] = x + fixed.minX - moving.maxX + slack;
    rows[o + 1] = x + fixed.maxX - moving.minX - slack;
    rows[o + 2] = y + fixed.minY - moving.maxY + slack;
    rows[o + 3] = y + fixed.maxY - moving.minY - slack;
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
    if (grid < 0) {
      rows[o] = Infinity;
      return grid;
    }
    const obstacle = job.obstacles[j - items]!;
    if (obstacle.isEdge) touch = shape.atEdge.touch;
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
  rows[o + 10] = weight;
  rows[o + 11] = touch;
  const head = grid * HEAD;
  const { heads } = store.arena;
  rows[o + 12] = heads[head]!;
  rows[o + 13] = heads[head + 1]!;
  rows[o + 14] = heads[head + 2]!;
  rows[o + 15] = heads[head + 3]!;
  ints[k * 3] = heads[head + 5]!;
  ints[k * 3 + 1] = heads[head + 4]!;
  ints[k * 3 + 2] = grid;
  return grid;
}

import type { WorkLayout } from "../layout/workLayout.ts";

/**
 * Lays all copies by their boxes in columns across the roll, longest first: a plan within a millisecond, before any
 * no-fit polygon is built. Only for an open region without obstacles; false when it does not apply.
 * Source: next-fit decreasing height (Coffman, Garey, Johnson & Tarjan 1980, SIAM J. Comput. 9,
 * from memory).
 */
export function boxStart(state: WorkLayout): boolean {
  const { job, spots, count } = state;
  // Columns know no pattern: what is matched is laid one by one.
  if (state.isMatched) return false;
  if (job.window.maxX !== Infinity || job.obstacles.length > 0) return false;
  const length = (v: number): number => job.variants[v]!.maxX - job.variants[v]!.minX;
  const chosen: number[] = [];
  for (let i = 0; i < count; i++) {
    const variants = job.variantsOf[job.items[i]!.shape]!;
    if (variants.length === 0) return false;
    chosen.push(variants.reduce((a, b) => (length(b) < length(a) ? b : a)));
  }
  const order = chosen.map((_, i) => i).sort((a, b) => length(chosen[b]!) - length(chosen[a]!) || a - b);
  let x = job.window.minX;
  let y = job.window.minY;
  let column = 0;
  for (const i of order) {
    const variant = job.variants[chosen[i]!]!;
    const height = variant.maxY - variant.minY;
    if (y + height > job.window.maxY + 1 && y > job.window.minY) {
      x += column;
      y = job.window.minY;
      column = 0;
    }
    spots.variant[i] = chosen[i]!;
    spots.x[i] = x - variant.minX;
    spots.y[i] = y - variant.minY;
    y += height;
    column = Math.max(column, variant.maxX - variant.minX);
  }
  spots.maxX = x + column;
  return true;
}

import type { CutBox } from "./cutTree.ts";

/**
 * The largest empty rectangle in `box` beside the `taken` ones, no side shorter than `leastSide`, exact; null when
 * there is none.
 * Cost: O(n³) for n boxes taken (every pair of their edges across, one sweep along each): 2 ms for 75.
 */
export function largestFreeBox(box: CutBox, taken: readonly CutBox[], leastSide: number): CutBox | null {
  const xs = edgesOf(
    box.x,
    box.x + box.dx,
    taken.flatMap(({ x, dx }) => [x, x + dx]),
  );
  const ys = edgesOf(
    box.y,
    box.y + box.dy,
    taken.flatMap(({ y, dy }) => [y, y + dy]),
  );
  const columns = xs.length - 1;
  const blocked = new Uint8Array(columns);
  let best: CutBox | null = null;
  for (let low = 0; low + 1 < ys.length; low++) {
    blocked.fill(0);
    for (let high = low + 1; high < ys.length; high++) {
      for (const { x, y, dx, dy } of taken) {
        if (y >= ys[high]! || y + dy <= ys[high - 1]!) continue;
        for (let c = lowerEdge(xs, x); c < columns && xs[c]! < x + dx; c++) blocked[c] = 1;
      }
      const dy = ys[high]! - ys[low]!;
      for (let c = 0; c < columns; c++) {
        if (blocked[c] === 1) continue;
        const start = c;
        while (c + 1 < columns && blocked[c + 1] === 0) c++;
        const dx = xs[c + 1]! - xs[start]!;
        if (Math.min(dx, dy) < leastSide) continue;
        if (best === null || dx * dy > best.dx * best.dy) best = { x: xs[start]!, y: ys[low]!, dx, dy };
      }
    }
  }
  return best;
}

function edgesOf(from: number, to: number, edges: readonly number[]): Float64Array {
  const inside = edges.filter((edge) => edge > from && edge < to);
  return Float64Array.from(new Set([from, to, ...inside])).sort();
}

/** Index of the interval that holds or follows `x`. */
function lowerEdge(xs: Float64Array, x: number): number {
  let low = 0;
  let high = xs.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (xs[middle + 1]! <= x) low = middle + 1;
    else high = middle;
  }
  return low;
}

import type { Box } from "./box.ts";

/** Rising lines from `from` to `to` with those of `edges` that lie between, each once. */
export function linesOf(from: number, to: number, edges: readonly number[]): Float64Array {
  const between = edges.filter((edge) => edge > from && edge < to);
  return Float64Array.from(new Set([from, to, ...between])).sort();
}

/** Marks the cells between lines `xs` and `ys` that boxes take; their edges lie on lines or beyond them. */
export function markBoxes(boxes: readonly Box[], xs: Float64Array, ys: Float64Array, out: Uint8Array): void {
  const columns = xs.length - 1;
  for (const { minX, minY, maxX, maxY } of boxes) {
    const [first, last] = [lineFrom(xs, minX), lineFrom(xs, maxX)];
    for (let row = lineFrom(ys, minY); row < Math.min(lineFrom(ys, maxY), ys.length - 1); row++)
      out.fill(1, row * columns + first, row * columns + Math.min(last, columns));
  }
}

/** Index of the first line at `value` or beyond it. */
function lineFrom(lines: Float64Array, value: number): number {
  let low = 0;
  let high = lines.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (lines[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

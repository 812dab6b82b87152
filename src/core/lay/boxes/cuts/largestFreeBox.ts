import { largestFree } from "../../../geometry/freeCells.kernel.ts";
import { linesOf, markBoxes } from "../../../geometry/freeGrid.ts";
import type { CutBox } from "./cutTree.ts";

/**
 * The largest empty rectangle in `box` beside the `taken` ones, no side shorter than `leastSide`, exact; null when
 * there is none.
 * Cost: O(n²) for n boxes taken: a grid of their edges.
 */
export function largestFreeBox(box: CutBox, taken: readonly CutBox[], leastSide: number): CutBox | null {
  const edges = taken.map(({ x, y, dx, dy }) => ({ minX: x, minY: y, maxX: x + dx, maxY: y + dy }));
  const xs = linesOf(
    box.x,
    box.x + box.dx,
    edges.flatMap(({ minX, maxX }) => [minX, maxX]),
  );
  const ys = linesOf(
    box.y,
    box.y + box.dy,
    edges.flatMap(({ minY, maxY }) => [minY, maxY]),
  );
  const columns = xs.length - 1;
  const blocked = new Uint8Array(columns * (ys.length - 1));
  markBoxes(edges, xs, ys, blocked);
  const found = new Int32Array(4);
  largestFree(blocked, xs, ys, leastSide, new Int32Array(columns), new Int32Array(columns + 1), found);
  const [column, row, wide, tall] = found as unknown as [number, number, number, number];
  if (wide === 0) return null;
  const [x, y] = [xs[column]!, ys[row]!];
  return { x, y, dx: xs[column + wide]! - x, dy: ys[row + tall]! - y };
}

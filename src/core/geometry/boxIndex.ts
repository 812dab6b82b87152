import { type Box, boxesMeet } from "./box.ts";

/** Cells that a list is sorted into along x: a window then meets few things that it does not show. */
const MOST_CELLS = 4096;

/**
 * Finds which of many things touch a window: those whose box meets it, in their order. Cost: O(n) to make, then the
 * things in the window's columns.
 */
export function boxIndex<T>(things: readonly T[], boxOf: (thing: T) => Box): (window: Box) => T[] {
  const boxes = things.map(boxOf);
  const least = boxes.reduce((min, { minX }) => Math.min(min, minX), Infinity);
  const most = boxes.reduce((max, { maxX }) => Math.max(max, maxX), -Infinity);
  const count = Math.max(1, Math.min(MOST_CELLS, things.length));
  const wide = (most - least) / count || 1;
  const cellOf = (x: number): number => Math.max(0, Math.min(count - 1, Math.floor((x - least) / wide)));
  const cells: number[][] = Array.from({ length: count }, () => []);
  const firstCells = Int32Array.from(boxes, ({ minX }) => cellOf(minX));
  boxes.forEach(({ maxX }, i) => {
    const last = cellOf(maxX);
    for (let cell = firstCells[i]!; cell <= last; cell++) cells[cell]!.push(i);
  });
  return (window) => {
    const found: number[] = [];
    const [first, last] = [cellOf(window.minX), cellOf(window.maxX)];
    for (let cell = first; cell <= last; cell++) {
      for (const i of cells[cell]!) {
        // Found in the first of its cells that the window has.
        if (cell === Math.max(first, firstCells[i]!) && boxesMeet(boxes[i]!, window)) found.push(i);
      }
    }
    return found.sort((a, b) => a - b).map((i) => things[i]!);
  };
}

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
  boxes.forEach(({ minX, maxX }, i) => {
    for (let cell = cellOf(minX); cell <= cellOf(maxX); cell++) cells[cell]!.push(i);
  });
  return (window) => {
    const found = new Set<number>();
    for (let cell = cellOf(window.minX); cell <= cellOf(window.maxX); cell++)
      for (const i of cells[cell]!) if (boxesMeet(boxes[i]!, window)) found.add(i);
    return [...found].sort((a, b) => a - b).map((i) => things[i]!);
  };
}

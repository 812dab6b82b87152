import { ringBox } from "../geometry/box.ts";
import type { Polygon, Ring } from "../geometry/ring.ts";
import { rectangleRing } from "../geometry/ring.ts";
import { LEAST_OFFCUT } from "../lay/alternatives/layFigures.ts";
import { largestFree, markTouched } from "./freeCells.kernel.ts";

/** A rectangle of cloth that is left over, on its stock. mm. */
export interface Offcut {
  readonly x: number;
  readonly y: number;
  readonly along: number;
  readonly across: number;
}

/** Most offcuts told of one stock. */
const MOST = 6;
/** Cells in the grid at most; the cell grows with the stock. */
const MOST_CELLS = 400_000;
const LEAST_CELL = 5;

/**
 * Rectangles left over on a stock, largest first, none over another. They are found on a grid of 5 mm or coarser, so
 * each is truly free and up to two cells short of the largest possible.
 *
 * Shapes: `region` is the stock's box 0…length × 0…width; `outline` its outline when it is no rectangle; `taken` are
 *         the pieces as they lie, and flaws. Units: mm.
 * Cost:   O(cells + points × rows) for each offcut told.
 */
export function offcutsOf(
  region: { readonly length: number; readonly width: number; readonly outline: Polygon | null },
  taken: readonly Polygon[],
): Offcut[] {
  const { length, width, outline } = region;
  if (!(length >= LEAST_OFFCUT && width >= LEAST_OFFCUT)) return [];
  const cell = Math.max(LEAST_CELL, Math.sqrt((length * width) / MOST_CELLS));
  const columns = Math.floor(length / cell);
  const rows = Math.floor(width / cell);
  const blocked = new Uint8Array(columns * rows);
  const mark = (rings: readonly Ring[]): void => markRings(rings, cell, columns, rows, blocked);
  for (const { outer, holes } of taken) mark([outer, ...holes]);
  // Outside the outline is a frame round it with the outline as its opening.
  if (outline) mark([frameRound(outline, length, width), outline.outer, ...outline.holes]);
  const found: Offcut[] = [];
  const heights = new Int32Array(columns + 1);
  const stack = new Int32Array(columns + 1);
  const best = new Int32Array(4);
  while (found.length < MOST) {
    largestFree(blocked, columns, rows, Math.ceil(LEAST_OFFCUT / cell), heights, stack, best);
    const [column, row, wide, tall] = best as unknown as [number, number, number, number];
    if (wide === 0) break;
    found.push({ x: column * cell, y: row * cell, along: wide * cell, across: tall * cell });
    for (let r = row; r < row + tall; r++) blocked.fill(1, r * columns + column, r * columns + column + wide);
  }
  return found;
}

function markRings(rings: readonly Ring[], cell: number, columns: number, rows: number, blocked: Uint8Array): void {
  const points = Float64Array.from(rings.flatMap((ring) => [...ring]));
  const ends = new Int32Array(rings.length);
  let end = 0;
  for (const [i, ring] of rings.entries()) ends[i] = end += ring.length;
  markTouched(points, ends, cell, columns, rows, new Float64Array(points.length), blocked);
}

function frameRound(outline: Polygon, length: number, width: number): Ring {
  const box = ringBox(outline.outer);
  const x = Math.min(0, box.minX) - 1;
  const y = Math.min(0, box.minY) - 1;
  return rectangleRing(x, y, Math.max(length, box.maxX) + 1 - x, Math.max(width, box.maxY) + 1 - y);
}

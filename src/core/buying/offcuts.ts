import { isRectangle, ringBox } from "../geometry/box.ts";
import { largestFree, markTouched } from "../geometry/freeCells.kernel.ts";
import { linesOf, markBoxes } from "../geometry/freeGrid.ts";
import type { Polygon, Ring } from "../geometry/ring.ts";
import { rectangleRing } from "../geometry/ring.ts";
import { LEAST_OFFCUT } from "../lay/alternatives/layFigures.ts";

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
/** Of more cells than this the lines along the edges of rectangles are left out. */
const MOST_EXACT = 1_000_000;

/**
 * Rectangles left over on a stock, largest first, none over another: exact beside rectangles. Curved outlines are met on
 * a grid of 5 mm or coarser, so beside them each is truly free and up to two cells short of the largest possible.
 *
 * Shapes: `region` is the stock's box 0…length × 0…width; `outline` its outline when it is no rectangle; `taken` are
 *         the pieces as they lie, and flaws. Units: mm.
 * Cost:   O(cells + points × rows) for each offcut told.
 */
export function offcutsOf(
  region: { readonly length: number; readonly width: number; readonly outline: Polygon | null },
  taken: readonly Polygon[],
): Offcut[] {
  const { length, width } = region;
  if (!(length >= LEAST_OFFCUT && width >= LEAST_OFFCUT)) return [];
  const { xs, ys, blocked } = blockedGrid(region, taken);
  const columns = xs.length - 1;
  const found: Offcut[] = [];
  const heights = new Int32Array(columns);
  const stack = new Int32Array(columns + 1);
  const best = new Int32Array(4);
  while (found.length < MOST) {
    largestFree(blocked, xs, ys, LEAST_OFFCUT, heights, stack, best);
    const [column, row, wide, tall] = best as unknown as [number, number, number, number];
    if (wide === 0) break;
    const [x, y] = [xs[column]!, ys[row]!];
    found.push({ x, y, along: xs[column + wide]! - x, across: ys[row + tall]! - y });
    for (let r = row; r < row + tall; r++) blocked.fill(1, r * columns + column, r * columns + column + wide);
  }
  return found;
}

/**
 * The longest rectangle along x that is at least `LEAST_OFFCUT` wide, as wide as it can be at that length; null when
 * there is none. As exact as `offcutsOf`. Cost: O(cells × rows).
 */
export function longestStripOf(
  region: { readonly length: number; readonly width: number; readonly outline: Polygon | null },
  taken: readonly Polygon[],
): Offcut | null {
  if (!(region.length >= LEAST_OFFCUT && region.width >= LEAST_OFFCUT)) return null;
  const { xs, ys, blocked } = blockedGrid(region, taken);
  const columns = xs.length - 1;
  // For each column the row above its last blocked cell, up to the row looked at.
  const from = new Int32Array(columns);
  let best: Offcut | null = null;
  for (let row = 0; row + 1 < ys.length; row++) {
    for (let column = 0; column < columns; column++)
      if (blocked[row * columns + column] !== 0) from[column] = row + 1;
    const top = ys[row + 1]!;
    for (let low = row; low >= 0; low--) {
      const across = top - ys[low]!;
      if (across < LEAST_OFFCUT) continue;
      const run = longestRun(from, low, xs);
      const isBetter =
        best === null || run.along > best.along || (run.along === best.along && across > best.across);
      if (run.along >= LEAST_OFFCUT && isBetter) best = { x: run.x, y: ys[low]!, along: run.along, across };
      // Farther down it can only be shorter.
      if (best !== null && run.along < best.along) break;
    }
  }
  return best;
}

/** The longest run of columns that are free from row `low` on. */
function longestRun(
  from: Int32Array,
  low: number,
  xs: Float64Array,
): { readonly x: number; readonly along: number } {
  let best = { x: 0, along: 0 };
  let start = 0;
  for (let column = 0; column <= from.length; column++) {
    if (column < from.length && from[column]! <= low) continue;
    const along = xs[column]! - xs[start]!;
    if (along > best.along) best = { x: xs[start]!, along };
    start = column + 1;
  }
  return best;
}

/** The stock in cells, those marked that something lies on. */
function blockedGrid(
  { length, width, outline }: Parameters<typeof offcutsOf>[0],
  taken: readonly Polygon[],
): { readonly xs: Float64Array; readonly ys: Float64Array; readonly blocked: Uint8Array } {
  const cell = Math.max(LEAST_CELL, Math.sqrt((length * width) / MOST_CELLS));
  const isSquare = (polygon: Polygon): boolean => polygon.holes.length === 0 && isRectangle(polygon.outer);
  const boxes = taken.filter(isSquare).map(({ outer }) => ringBox(outer));
  const curved = taken.filter((polygon) => !isSquare(polygon)).map(({ outer, holes }) => [outer, ...holes]);
  // Outside the outline is a frame round it with the outline as its opening.
  if (outline) curved.push([frameRound(outline, length, width), outline.outer, ...outline.holes]);
  const spans = curved.map(([outer]) => ringBox(outer!));
  const roughX = spans.flatMap(({ minX, maxX }) => roughLines(Math.max(0, minX), Math.min(length, maxX), cell));
  const roughY = spans.flatMap(({ minY, maxY }) => roughLines(Math.max(0, minY), Math.min(width, maxY), cell));
  let xs = linesOf(0, length, [...roughX, ...boxes.flatMap(({ minX, maxX }) => [minX, maxX])]);
  let ys = linesOf(0, width, [...roughY, ...boxes.flatMap(({ minY, maxY }) => [minY, maxY])]);
  const isExact = xs.length * ys.length <= MOST_EXACT;
  if (!isExact) {
    xs = linesOf(0, length, roughLines(0, length, cell));
    ys = linesOf(0, width, roughLines(0, width, cell));
    curved.push(...taken.filter(isSquare).map(({ outer }) => [outer]));
  }
  const blocked = new Uint8Array((xs.length - 1) * (ys.length - 1));
  if (isExact) markBoxes(boxes, xs, ys, blocked);
  for (const rings of curved) markRings(rings, xs, ys, blocked);
  return { xs, ys, blocked };
}

/** Lines a cell apart over what lies from `from` to `to`, with one to spare on either side. */
function roughLines(from: number, to: number, cell: number): number[] {
  const first = Math.floor(from / cell) - 1;
  return Array.from({ length: Math.max(0, Math.ceil(to / cell) + 2 - first) }, (_, i) => (first + i) * cell);
}

function markRings(rings: readonly Ring[], xs: Float64Array, ys: Float64Array, blocked: Uint8Array): void {
  const points = Float64Array.from(rings.flatMap((ring) => [...ring]));
  const ends = new Int32Array(rings.length);
  let end = 0;
  for (const [i, ring] of rings.entries()) ends[i] = end += ring.length;
  markTouched(points, ends, xs, ys, new Float64Array(points.length), blocked);
}

function frameRound(outline: Polygon, length: number, width: number): Ring {
  const box = ringBox(outline.outer);
  const x = Math.min(0, box.minX) - 1;
  const y = Math.min(0, box.minY) - 1;
  return rectangleRing(x, y, Math.max(length, box.maxX) + 1 - x, Math.max(width, box.maxY) + 1 - y);
}

import { type GridArena, HEAD, takeBytes } from "./gridArena.ts";
import { EDGE, edgeDistance, leastCode, OUTSIDE, windingOf } from "./gridEdges.kernel.ts";

/** Points a side of the lattice on which the edges that matter deep inside are found. */
const LATTICE = 5;
/** The point whose side is asked lies off the middle of a cell by this share of it: corners may lie level with the middle. */
const OFF = 0.0137;
/** Lists inside are pruned when they are longer. */
const LONG_LIST = 4;

/** Room for what is known of a cell while it is filled. */
let distances = new Float64Array(256);
let kept = new Int32Array(256);
let nearest = new Int32Array(LATTICE * LATTICE);

/**
 * Fills one cell of a feature grid, when it is first asked for: which edges can be nearest anywhere in it, and what any
 * point of it is deep at least. The arrays of the arena may be new ones after.
 * Cost: a distance for each edge of the grid, and a few for those that stay.
 */
export function fillCell(arena: GridArena, grid: number, at: number): void {
  const { heads, edges } = arena;
  const h = grid * HEAD;
  const side = heads[h + 4]!;
  const base = heads[h + 5]!;
  const first = heads[h + 6]!;
  const count = heads[h + 7]!;
  const cell = at - base;
  const width = 1 / heads[h + 2]!;
  const height = 1 / heads[h + 3]!;
  const x = heads[h]! + ((cell % side) + 0.5) * width;
  const y = heads[h + 1]! + (Math.floor(cell / side) + 0.5) * height;
  const half = Math.sqrt(width * width + height * height) / 2;
  if (distances.length < count) {
    distances = new Float64Array(2 * count);
    kept = new Int32Array(2 * count);
  }
  let least = Infinity;
  for (let i = 0; i < count; i++) {
    const d = edgeDistance(edges, (first + i) * EDGE, x, y);
    distances[i] = d;
    if (d < least) least = d;
  }
  const away = Math.sqrt(least);
  const isClear = away > half * 1.01;
  const insideOut = heads[h + 9]! === 1;
  const winding = isClear ? windingOf(edges, first, count, x, y + OFF * height) : 0;
  const isInside = isClear && (insideOut ? winding + 1 > 0 : winding !== 0);
  const leastAt = 4 * (base + side * side) + cell;
  if (isClear && !isInside && away - half > heads[h + 8]!) {
    arena.cells[at] = -1;
    arena.least[leastAt] = OUTSIDE;
    return;
  }
  const reach = (away + 2 * half) * (1 + 1e-9);
  let some = 0;
  for (let i = 0; i < count; i++) if (distances[i]! <= reach * reach) kept[some++] = first + i;
  if (isClear && !isInside) {
    const start = addList(arena, 0, some);
    arena.cells[at] = -start - 2;
    arena.least[leastAt] = OUTSIDE;
    return;
  }
  if (some === 1) {
    arena.cells[at] = kept[0]! * 2 + 1;
    arena.least[leastAt] = leastCode(leastOfLine(edges, kept[0]! * EDGE, x, y, width, height));
    return;
  }
  if (!isInside) {
    const start = addList(arena, 0, some);
    arena.cells[at] = start * 2;
    return;
  }
  if (some > LONG_LIST) some = keepNearest(edges, some, x, y, width, height);
  arena.least[leastAt] = leastCode(leastOfKept(edges, some, x, y, width, height));
  const start = addList(arena, 1, some);
  arena.cells[at] = start * 2;
}

/** Writes what is kept as a list; a neighbouring cell's list that is the same serves again. */
function addList(arena: GridArena, inside: number, some: number): number {
  const head = some * 2 + inside;
  let slot = head;
  for (let i = 0; i < some; i++) slot = Math.imul(slot, 31) + kept[i]!;
  slot &= arena.known.length - 1;
  const there = arena.known[slot]!;
  if (there > 0 && isSameList(arena.cells, there, head, some)) return there;
  const start = takeBytes(arena, 4 * (some + 1)) / 4;
  const { cells } = arena;
  cells[start] = head;
  for (let i = 0; i < some; i++) cells[start + 1 + i] = kept[i]!;
  arena.known[slot] = start;
  return start;
}

function isSameList(cells: Int32Array, there: number, head: number, some: number): boolean {
  if (cells[there] !== head) return false;
  for (let i = 0; i < some; i++) if (cells[there + 1 + i] !== kept[i]) return false;
  return true;
}

/** Least signed depth below the line of the edge at `e` in the cell of w × h about (x, y). */
function leastOfLine(edges: Float64Array, e: number, x: number, y: number, w: number, h: number): number {
  const ux = edges[e + 2]!;
  const uy = edges[e + 3]!;
  const middle = ux * (y - edges[e + 1]!) - uy * (x - edges[e]!);
  return middle - (Math.abs(ux) * h + Math.abs(uy) * w) / 2;
}

/** How near the nearest of the kept edges comes to any point of a cell, at least: from the middles of its quarters. */
function leastOfKept(edges: Float64Array, some: number, x: number, y: number, w: number, h: number): number {
  let least = Infinity;
  for (let i = 0; i < some; i++)
    for (let corner = 0; corner < 4; corner++) {
      const px = x + ((corner & 1) - 0.5) * (w / 2);
      const py = y + ((corner >> 1) - 0.5) * (h / 2);
      const d = edgeDistance(edges, kept[i]! * EDGE, px, py);
      if (d < least) least = d;
    }
  return Math.sqrt(least) - Math.sqrt(w * w + h * h) / 4;
}

/** Deep inside, edges that are nearest at no lattice point change the depth by a sliver at most: they are let go. */
function keepNearest(edges: Float64Array, some: number, x: number, y: number, w: number, h: number): number {
  if (nearest.length < some) nearest = new Int32Array(2 * some);
  nearest.fill(0, 0, some);
  const step = LATTICE - 1;
  for (let i = 0; i < LATTICE; i++)
    for (let j = 0; j < LATTICE; j++) {
      const px = x + (i / step - 0.5) * w;
      const py = y + (j / step - 0.5) * h;
      let best = Infinity;
      let bestAt = 0;
      for (let k = 0; k < some; k++) {
        const d = edgeDistance(edges, kept[k]! * EDGE, px, py);
        if (d >= best) continue;
        best = d;
        bestAt = k;
      }
      nearest[bestAt] = 1;
    }
  let count = 0;
  for (let k = 0; k < some; k++) if (nearest[k] === 1) kept[count++] = kept[k]!;
  return count;
}

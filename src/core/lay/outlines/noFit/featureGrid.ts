import type { Box } from "../../../geometry/box.ts";
import { type Ring, signedArea } from "../../../geometry/ring.ts";
import { type GridArena, grownFloats, HEAD, takeBytes } from "./gridArena.ts";
import { fillCell } from "./gridCells.kernel.ts";
import { EDGE } from "./gridEdges.kernel.ts";

/** What a feature grid is to cover. */
export interface GridWish extends Box {
  /** Cells a side. */
  readonly side: number;
  /** Outside cells closer than this keep their list. */
  readonly near: number;
  /** True when everything but the (clockwise) rings is inside: the frame round a region. */
  readonly insideOut: boolean;
}

/** Edges of rings as the depth kernel wants them. */
export function ringEdges(rings: readonly Ring[]): Float64Array {
  const solid = rings.filter((ring) => signedArea(ring) !== 0);
  const total = solid.reduce((sum, ring) => sum + ring.length / 2, 0);
  const edges = new Float64Array(total * EDGE);
  let next = 0;
  for (const ring of solid) {
    const n = ring.length / 2;
    const convex = (i: number): boolean => {
      const a = ((i + n - 1) % n) * 2;
      const b = (i % n) * 2;
      const c = ((i + 1) % n) * 2;
      const ax = ring[b]! - ring[a]!;
      const ay = ring[b + 1]! - ring[a + 1]!;
      return ax * (ring[c + 1]! - ring[b + 1]!) - ay * (ring[c]! - ring[b]!) > 0;
    };
    for (let i = 0; i < n; i++) {
      const x = ring[2 * i]!;
      const y = ring[2 * i + 1]!;
      const dx = ring[(2 * i + 2) % (2 * n)]! - x;
      const dy = ring[(2 * i + 3) % (2 * n)]! - y;
      const length = Math.hypot(dx, dy);
      const flags = (convex(i) ? 1 : 0) + (convex(i + 1) ? 2 : 0);
      edges.set([x, y, dx / length, dy / length, length, flags], next);
      next += EDGE;
    }
  }
  return edges;
}

/**
 * Adds the feature grid of a no-fit polygon, given by its edges (`count` from the array's start), to the arena; its
 * number comes back. Its cells are filled when first asked for. The depth it gives is exact up to rounding where a cell
 * meets the outline, and within 0.2 % of the piece's size deep inside.
 * Cost: room for its cells, 5 bytes each, and for its edges.
 */
export function addFeatureGrid(arena: GridArena, edges: Float64Array, count: number, wish: GridWish): number {
  const id = arena.gridCount++;
  arena.heads = grownFloats(arena.heads, arena.gridCount * HEAD);
  const bytes = EDGE * Float64Array.BYTES_PER_ELEMENT;
  // Edges are numbered through the whole buffer, so they begin at a multiple of their size.
  takeBytes(arena, (bytes - (arena.used % bytes)) % bytes);
  const first = takeBytes(arena, count * bytes) / bytes;
  arena.edges.set(edges.subarray(0, count * EDGE), first * EDGE);
  const size = wish.side * wish.side;
  const base = takeBytes(arena, Math.ceil((5 * size) / 4) * 4) / 4;
  const { heads } = arena;
  const h = id * HEAD;
  heads[h] = wish.minX;
  heads[h + 1] = wish.minY;
  heads[h + 2] = wish.side / (wish.maxX - wish.minX);
  heads[h + 3] = wish.side / (wish.maxY - wish.minY);
  heads[h + 4] = wish.side;
  heads[h + 5] = base;
  heads[h + 6] = first;
  heads[h + 7] = count;
  heads[h + 8] = wish.near;
  heads[h + 9] = wish.insideOut ? 1 : 0;
  return id;
}

/** Fills every cell of a grid at once. */
export function fillWhole(arena: GridArena, grid: number): void {
  const base = arena.heads[grid * HEAD + 5]!;
  const side = arena.heads[grid * HEAD + 4]!;
  for (let cell = 0; cell < side * side; cell++)
    if (arena.cells[base + cell] === 0) fillCell(arena, grid, base + cell);
}

import { orient2d } from "robust-predicates";
import type { Ring } from "./ring.ts";

/** Two edges of a ring that meet where they should not, by the vertex each starts from, and about where. */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  readonly x: number;
  readonly y: number;
}

/**
 * The first place where a ring crosses or touches itself, or runs back over its own edge; null when it is simple.
 *
 * Shapes: ring open, any winding, at least three vertices, none repeated in a row.
 * Cost:   O(n²), boxes first; exact signs by robust predicates (Shewchuk 1997, Discrete & Computational Geometry 18).
 */
export function firstCrossing(ring: Ring): Crossing | null {
  const n = ring.length / 2;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const at = j === i + 1 || (i === 0 && j === n - 1) ? foldedBack(ring, i, j) : segmentsMeet(ring, i, j);
      if (at !== null) return { first: i, second: j, x: at[0], y: at[1] };
    }
  return null;
}

type Point = readonly [number, number];

function vertex(ring: Ring, i: number): Point {
  const at = (2 * i) % ring.length;
  return [ring[at]!, ring[at + 1]!];
}

/** Neighbouring edges share a vertex; they meet elsewhere only when one runs back over the other. */
function foldedBack(ring: Ring, i: number, j: number): Point | null {
  const middle = j === i + 1 ? j : 0;
  const n = ring.length / 2;
  const before = vertex(ring, middle + n - 1);
  const at = vertex(ring, middle);
  const after = vertex(ring, middle + 1);
  if (orient2d(...before, ...at, ...after) !== 0) return null;
  const dot = (before[0] - at[0]) * (after[0] - at[0]) + (before[1] - at[1]) * (after[1] - at[1]);
  return dot > 0 ? at : null;
}

function segmentsMeet(ring: Ring, i: number, j: number): Point | null {
  // Most pairs are far apart: told before anything is allocated.
  if (apart(ring, 2 * i, 2 * j) || apart(ring, 2 * i + 1, 2 * j + 1)) return null;
  const a = vertex(ring, i);
  const b = vertex(ring, i + 1);
  const c = vertex(ring, j);
  const d = vertex(ring, j + 1);
  const abc = orient2d(...a, ...b, ...c);
  const abd = orient2d(...a, ...b, ...d);
  const cda = orient2d(...c, ...d, ...a);
  const cdb = orient2d(...c, ...d, ...b);
  if (abc * abd < 0 && cda * cdb < 0) {
    const t = abc / (abc - abd);
    return [c[0] + t * (d[0] - c[0]), c[1] + t * (d[1] - c[1])];
  }
  if (abc === 0 && within(a, b, c)) return c;
  if (abd === 0 && within(a, b, d)) return d;
  if (cda === 0 && within(c, d, a)) return a;
  return cdb === 0 && within(c, d, b) ? b : null;
}

/** Whether two edges' extents in one coordinate, given by its index at their starts, have nothing in common. */
function apart(ring: Ring, i: number, j: number): boolean {
  const a = ring[i]!;
  const b = ring[(i + 2) % ring.length]!;
  const c = ring[j]!;
  const d = ring[(j + 2) % ring.length]!;
  return (a < c && a < d && b < c && b < d) || (a > c && a > d && b > c && b > d);
}

function within(a: Point, b: Point, p: Point): boolean {
  return (
    p[0] >= Math.min(a[0], b[0]) &&
    p[0] <= Math.max(a[0], b[0]) &&
    p[1] >= Math.min(a[1], b[1]) &&
    p[1] <= Math.max(a[1], b[1])
  );
}

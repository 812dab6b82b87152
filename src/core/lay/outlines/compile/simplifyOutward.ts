import { type Box, ringBox } from "../../../geometry/box.ts";
import type { Ring } from "../../../geometry/ring.ts";

/** Above this many vertices an outline is simplified before the search. */
const PLENTY = 48;
/** An outline with more than this (a panel with hundreds of teeth) is laid as a coarser one that holds it. */
const MOST = 400;

interface Cut {
  /** Area gained, in square units of the ring. */
  readonly gain: number;
  /** Vertex that stands in for `at` and, when a convex edge was removed, for the one after it. */
  readonly x: number;
  readonly y: number;
  readonly takes: 1 | 2;
}

/** The cheapest outward cut at vertex `i`, or null when none stays within `tolerance`. */
function cutAt(points: readonly number[], i: number, tolerance: number): Cut | null {
  const n = points.length / 2;
  const at = (k: number): [number, number] => {
    const j = ((k + n) % n) * 2;
    return [points[j]!, points[j + 1]!];
  };
  const [ax, ay] = at(i - 1);
  const [bx, by] = at(i);
  const [cx, cy] = at(i + 1);
  const turnB = (bx - ax) * (cy - by) - (by - ay) * (cx - bx);
  if (turnB <= 0) {
    const chord = Math.hypot(cx - ax, cy - ay);
    if (chord === 0 || -turnB / chord > tolerance) return null;
    return { gain: -turnB / 2, x: ax, y: ay, takes: 1 };
  }
  const [dx, dy] = at(i + 2);
  const turnC = (cx - bx) * (dy - cy) - (cy - by) * (dx - cx);
  if (turnC <= 0) return null;
  // Edge b–c between two convex corners: lengthen its neighbours until they meet.
  const det = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx);
  if (det <= 0) return null;
  const s = ((cx - bx) * (dy - cy) - (cy - by) * (dx - cx)) / det;
  const x = bx + s * (bx - ax);
  const y = by + s * (by - ay);
  const edge = Math.hypot(cx - bx, cy - by);
  const height = Math.abs((cx - bx) * (y - by) - (cy - by) * (x - bx)) / edge;
  if (height > tolerance) return null;
  return { gain: (height * edge) / 2, x, y, takes: 2 };
}

/**
 * Whether the cut at `i` may be a large one: its vertex lies in the outline's box, not far off where two edges are
 * almost parallel, and no other vertex in what it fills, where the ring would run over itself.
 */
function isClear(points: readonly number[], i: number, cut: Cut, box: Box): boolean {
  if (cut.x < box.minX || cut.x > box.maxX || cut.y < box.minY || cut.y > box.maxY) return false;
  const n = points.length / 2;
  const corner = (k: number): [number, number] => [points[2 * (k % n)]!, points[2 * (k % n) + 1]!];
  const [first, third] = cut.takes === 1 ? [i + n - 1, i + 1] : [i, i + 1];
  const [ax, ay] = corner(first);
  const [bx, by] = cut.takes === 1 ? corner(i) : [cut.x, cut.y];
  const [cx, cy] = corner(third);
  const side = (x0: number, y0: number, x1: number, y1: number, x: number, y: number): number =>
    (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0);
  const turn = Math.sign(side(ax, ay, bx, by, cx, cy));
  if (turn === 0) return true;
  for (let k = 0; k < n; k++) {
    if (k === first % n || k === i || k === third % n) continue;
    const x = points[2 * k]!;
    const y = points[2 * k + 1]!;
    const ab = side(ax, ay, bx, by, x, y) * turn;
    const bc = side(bx, by, cx, cy, x, y) * turn;
    const ca = side(cx, cy, ax, ay, x, y) * turn;
    if (ab >= 0 && bc >= 0 && ca >= 0) return false;
  }
  return true;
}

/** Cuts of at most `limit`, the cheapest first, until none is left or only `fewest` vertices; with a box, clear ones. */
function cutDown(points: number[], limit: number, fewest: number, within: Box | null): void {
  while (points.length / 2 > fewest) {
    let best: Cut | null = null;
    let bestAt = -1;
    for (let i = 0; i < points.length / 2; i++) {
      const cut = cutAt(points, i, limit);
      if (cut === null || (best !== null && cut.gain >= best.gain)) continue;
      if (within !== null && !isClear(points, i, cut, within)) continue;
      best = cut;
      bestAt = i;
    }
    if (best === null) return;
    if (best.takes === 1) points.splice(2 * bestAt, 2);
    else {
      const next = (bestAt + 1) % (points.length / 2);
      points[2 * bestAt] = best.x;
      points[2 * bestAt + 1] = best.y;
      points.splice(2 * next, 2);
    }
  }
}

/**
 * A ring with fewer vertices that holds the given one: reflex vertices are bridged, edges between two convex
 * corners are replaced by the meeting point of their neighbours, cheapest area first. Only outlines with many
 * vertices (flattened arcs) are touched; a plan for the result is a plan for the outline itself.
 *
 * Shapes: ring counter-clockwise. Units: mm. No cut moves the outline by more than `tolerance`, unless more than 400
 * vertices would be left: then it is made coarser until they are not.
 * Cost:   O(n²), n up to some thousands.
 */
export function simplifyOutward(ring: Ring, tolerance: number): Ring {
  if (ring.length / 2 <= PLENTY) return ring;
  const points = Array.from(ring);
  const box = ringBox(ring);
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const limit = Math.min(tolerance, size * 2e-3);
  cutDown(points, limit, PLENTY / 2, null);
  for (let wide = 2 * limit; points.length / 2 > MOST && wide < 2 * size; wide *= 2)
    cutDown(points, wide, MOST, box);
  return Float64Array.from(points);
}

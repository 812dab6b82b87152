import { type Ring, ringBox } from "../../geometry/ring.ts";

/** Above this many vertices an outline is simplified before the search. */
const PLENTY = 48;

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
 * A ring with fewer vertices that holds the given one: reflex vertices are bridged, edges between two convex
 * corners are replaced by the meeting point of their neighbours, cheapest area first. Only outlines with many
 * vertices (flattened arcs) are touched; a plan for the result is a plan for the outline itself.
 *
 * Shapes: ring counter-clockwise. Units: mm. No cut moves the outline by more than `tolerance`.
 * Cost:   O(n²), n below a thousand.
 */
export function simplifyOutward(ring: Ring, tolerance: number): Ring {
  if (ring.length / 2 <= PLENTY) return ring;
  const points = Array.from(ring);
  const box = ringBox(ring);
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const limit = Math.min(tolerance, size * 2e-3);
  for (;;) {
    let best: Cut | null = null;
    let bestAt = -1;
    for (let i = 0; i < points.length / 2; i++) {
      const cut = cutAt(points, i, limit);
      if (cut !== null && (best === null || cut.gain < best.gain)) {
        best = cut;
        bestAt = i;
      }
    }
    if (best === null || points.length / 2 <= PLENTY / 2) return Float64Array.from(points);
    if (best.takes === 1) points.splice(2 * bestAt, 2);
    else {
      const next = (bestAt + 1) % (points.length / 2);
      points[2 * bestAt] = best.x;
      points[2 * bestAt + 1] = best.y;
      points.splice(2 * next, 2);
    }
  }
}

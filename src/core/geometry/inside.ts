import type { Ring } from "./ring.ts";

/**
 * Whether a point lies inside the rings, holes taken out (even-odd, a ray along x); a point on an edge may count
 * either way. Cost: O(points). Source: crossing number, e.g. Hormann and Agathos 2001, The point in polygon problem.
 */
export function isInside(rings: readonly Ring[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings) if (isInsideRing(ring, x, y)) inside = !inside;
  return inside;
}

/** Whether a point lies inside one ring, whichever way it winds (even-odd). O(points). */
export function isInsideRing(ring: Ring, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const yi = ring[i + 1]!;
    const yj = ring[j + 1]!;
    if (yi > y !== yj > y && x < ((ring[j]! - ring[i]!) * (y - yi)) / (yj - yi) + ring[i]!) inside = !inside;
  }
  return inside;
}

/**
 * A closed outline `[x0, y0, x1, y1, …]` in mm: open (first vertex not repeated), counter-clockwise for an
 * outside, clockwise for a hole, y up.
 */
export type Ring = Float64Array;

/** An outside ring and the holes in it. */
export interface Polygon {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/** Axis-parallel box; empty when `minX > maxX`. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Signed area in mm²: positive when counter-clockwise. O(n). */
export function signedArea(ring: Ring): number {
  const n = ring.length;
  let twice = 0;
  for (let i = 0, j = n - 2; i < n; j = i, i += 2) twice += ring[j]! * ring[i + 1]! - ring[i]! * ring[j + 1]!;
  return twice / 2;
}

/** Area of a polygon in mm², holes taken off. */
export function polygonArea(polygon: Polygon): number {
  let area = Math.abs(signedArea(polygon.outer));
  for (const hole of polygon.holes) area -= Math.abs(signedArea(hole));
  return area;
}

/** Bounding box of a ring. O(n). */
export function ringBox(ring: Ring): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** The same outline walked the other way. */
export function reversedRing(ring: Ring): Ring {
  const out = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    out[ring.length - 2 - i] = ring[i]!;
    out[ring.length - 1 - i] = ring[i + 1]!;
  }
  return out;
}

/** Rectangle with its lower-left corner at (x, y), counter-clockwise. */
export function rectangleRing(x: number, y: number, width: number, height: number): Ring {
  return Float64Array.of(x, y, x + width, y, x + width, y + height, x, y + height);
}

/** A polygon without holes. */
export function solid(outer: Ring): Polygon {
  return { outer, holes: [] };
}

/** True when the ring is an axis-parallel rectangle (four corners, within `tolerance` mm). */
export function isRectangle(ring: Ring, tolerance = 1e-9): boolean {
  if (ring.length !== 8) return false;
  const box = ringBox(ring);
  for (let i = 0; i < 8; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    const onX = Math.abs(x - box.minX) <= tolerance || Math.abs(x - box.maxX) <= tolerance;
    const onY = Math.abs(y - box.minY) <= tolerance || Math.abs(y - box.maxY) <= tolerance;
    if (!onX || !onY) return false;
  }
  const full = (box.maxX - box.minX) * (box.maxY - box.minY);
  return Math.abs(Math.abs(signedArea(ring)) - full) <= tolerance * (1 + full);
}

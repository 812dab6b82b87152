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

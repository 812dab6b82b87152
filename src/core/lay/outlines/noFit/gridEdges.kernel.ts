/**
 * An edge of a no-fit polygon is 6 numbers: start x, y, direction x, y, length, corner flags (1: start corner convex,
 * 2: end corner convex), the inside to its left.
 */
export const EDGE = 6;

/** Code of a cell that lies outside; other codes are places in `LEAST`. */
export const OUTSIDE = 255;
const CODES_PER_DOUBLING = 8;
/** Depths that codes stand for, grid units: 0 for none known. */
export const LEAST: Float64Array = Float64Array.from({ length: OUTSIDE }, (_, code) =>
  code === 0 ? 0 : Math.exp((code / CODES_PER_DOUBLING) * Math.LN2),
);

/** Code of the largest depth surely below `depth`: a point may be rounded into the next cell. */
export function leastCode(depth: number): number {
  const sure = depth * (1 - 1e-6) - 0.01;
  if (!(sure >= 2)) return 0;
  return Math.min(OUTSIDE - 1, Math.floor(Math.log2(sure) * CODES_PER_DOUBLING));
}

/** Squared distance from (x, y) to the edge at `e`, a place in `edges`. */
export function edgeDistance(edges: Float64Array, e: number, x: number, y: number): number {
  const qx = x - edges[e]!;
  const qy = y - edges[e + 1]!;
  const ux = edges[e + 2]!;
  const uy = edges[e + 3]!;
  let t = qx * ux + qy * uy;
  if (t < 0) t = 0;
  else if (t > edges[e + 4]!) t = edges[e + 4]!;
  const rx = qx - t * ux;
  const ry = qy - t * uy;
  return rx * rx + ry * ry;
}

/** How often `count` edges from number `first` wind round (x, y). */
export function windingOf(edges: Float64Array, first: number, count: number, x: number, y: number): number {
  let winding = 0;
  for (let e = first * EDGE; e < (first + count) * EDGE; e += EDGE) {
    const ay = edges[e + 1]!;
    const uy = edges[e + 3]!;
    const by = ay + uy * edges[e + 4]!;
    if (ay > y === by > y) continue;
    const side = edges[e + 2]! * (y - ay) - uy * (x - edges[e]!);
    if (by > ay ? side > 0 : side < 0) winding += by > ay ? 1 : -1;
  }
  return winding;
}

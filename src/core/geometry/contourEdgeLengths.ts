import type { Contour } from "./contour.ts";
import { type ContourEdge, contourEdges, edgeCircle } from "./contourArcs.ts";

/** Length along an edge, arc or straight, mm: sweep 4 atan b, radius chord (1 + b²) / 4b. */
export function edgeLength({ x0, y0, x1, y1, bulge }: ContourEdge): number {
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const b = Math.abs(bulge);
  return b === 0 ? chord : (Math.atan(b) * chord * (1 + b * b)) / b;
}

/** Length all the way round, mm. */
export function contourLength(contour: Contour): number {
  return contourEdges(contour).reduce((sum, edge) => sum + edgeLength(edge), 0);
}

/**
 * Area of a closed contour with its arcs, mm²; positive when counter-clockwise. Each arc adds the segment between it and
 * its chord, r² (θ − sin θ) / 2.
 */
export function contourArea(contour: Contour): number {
  return contourEdges(contour).reduce((sum, edge) => {
    const { x0, y0, x1, y1, bulge } = edge;
    const triangle = (x0 * y1 - x1 * y0) / 2;
    if (bulge === 0) return sum + triangle;
    const { radius, sweep } = edgeCircle(edge);
    return sum + triangle + (radius * radius * (sweep - Math.sin(sweep))) / 2;
  }, 0);
}

/** Point `at` mm along an edge, and the outward direction there (to the right, the shape lying on the left). */
export function pointAlong(edge: ContourEdge, at: number): readonly [number, number, number, number] {
  if (edge.bulge === 0) {
    const length = Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    const ux = (edge.x1 - edge.x0) / length;
    const uy = (edge.y1 - edge.y0) / length;
    return [edge.x0 + ux * at, edge.y0 + uy * at, uy, -ux];
  }
  const { x, y, radius, start, sweep } = edgeCircle(edge);
  const side = Math.sign(sweep);
  const angle = start + (side * at) / radius;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [x + radius * c, y + radius * s, side * c, side * s];
}

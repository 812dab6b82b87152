import type { Contour } from "./contour.ts";
import { ahead, type ContourEdge, contourEdges, edgeCircle } from "./contourArcs.ts";

/** A point this near to an edge lies on it, mm. */
const ON_EDGE = 1e-6;

/**
 * A closed contour with a tooth on its edge: from `half` mm before (x, y) out to `tip` and back on `half` mm after it.
 * Null when the tooth does not fit on one edge. Arcs stay arcs.
 */
export function insertTooth(
  contour: Contour,
  [x, y]: readonly [number, number],
  half: number,
  tip: readonly [number, number],
): Contour | null {
  const edges = contourEdges(contour);
  for (const [i, edge] of edges.entries()) {
    const parts = edge.bulge === 0 ? splitLine(edge, x, y, half) : splitArc(edge, x, y, half);
    if (parts === null) continue;
    const [first, last] = parts;
    const put = [edge.x0, edge.y0, first.bulge, first.x1, first.y1, 0, ...tip, 0, last.x0, last.y0, last.bulge];
    const vertices = edges.flatMap((one, k) => (k === i ? put : [one.x0, one.y0, one.bulge]));
    return { vertices: Float64Array.from(vertices), closed: true };
  }
  return null;
}

type Parts = readonly [ContourEdge, ContourEdge];

function splitLine(edge: ContourEdge, x: number, y: number, half: number): Parts | null {
  const length = Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
  const ux = (edge.x1 - edge.x0) / length;
  const uy = (edge.y1 - edge.y0) / length;
  const at = (x - edge.x0) * ux + (y - edge.y0) * uy;
  const off = (x - edge.x0) * uy - (y - edge.y0) * ux;
  if (Math.abs(off) > ON_EDGE || at - half < ON_EDGE || at + half > length - ON_EDGE) return null;
  const point = (t: number) => ({ x: edge.x0 + ux * t, y: edge.y0 + uy * t });
  const a = point(at - half);
  const b = point(at + half);
  return [
    { ...edge, x1: a.x, y1: a.y },
    { ...edge, x0: b.x, y0: b.y },
  ];
}

function splitArc(edge: ContourEdge, x: number, y: number, half: number): Parts | null {
  const circle = edgeCircle(edge);
  if (Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.radius) > ON_EDGE) return null;
  const side = Math.sign(circle.sweep);
  const at = ahead(side * (Math.atan2(y - circle.y, x - circle.x) - circle.start));
  const step = half / circle.radius;
  const sweep = Math.abs(circle.sweep);
  if (at - step < 1e-9 || at + step > sweep - 1e-9) return null;
  const point = (angle: number) => ({
    x: circle.x + circle.radius * Math.cos(circle.start + side * angle),
    y: circle.y + circle.radius * Math.sin(circle.start + side * angle),
  });
  const a = point(at - step);
  const b = point(at + step);
  return [
    { ...edge, x1: a.x, y1: a.y, bulge: side * Math.tan((at - step) / 4) },
    { ...edge, x0: b.x, y0: b.y, bulge: side * Math.tan((sweep - at - step) / 4) },
  ];
}

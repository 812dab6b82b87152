import type { Contour } from "./contour.ts";
import { ahead, contourEdges, edgeCircle } from "./contourArcs.ts";

/** A place on a contour: which edge, how far along it, and how far the point asked for is from it; mm. */
export interface ContourPlace {
  readonly edge: number;
  readonly at: number;
  readonly distance: number;
}

/** The place on a contour nearest to a point. O(edges). */
export function pointOnContour(contour: Contour, x: number, y: number): ContourPlace {
  let best: ContourPlace = { edge: 0, at: 0, distance: Infinity };
  for (const [i, edge] of contourEdges(contour).entries()) {
    const place = edge.bulge === 0 ? onStraight(edge, x, y) : onArc(edge, x, y);
    if (place.distance < best.distance) best = { edge: i, ...place };
  }
  return best;
}

type Edge = ReturnType<typeof contourEdges>[number];
type Place = Omit<ContourPlace, "edge">;

function onStraight({ x0, y0, x1, y1 }: Edge, x: number, y: number): Place {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const length = Math.hypot(dx, dy);
  // An edge of no length is its one point.
  const long = length || 1;
  const at = Math.max(0, Math.min(length, ((x - x0) * dx + (y - y0) * dy) / long));
  const share = at / long;
  return { at, distance: Math.hypot(x - x0 - share * dx, y - y0 - share * dy) };
}

function onArc(edge: Edge, x: number, y: number): Place {
  const circle = edgeCircle(edge);
  const turn = Math.atan2(y - circle.y, x - circle.x) - circle.start;
  const along = ahead(circle.sweep > 0 ? turn : -turn);
  const sweep = Math.abs(circle.sweep);
  if (along <= sweep)
    return {
      at: along * circle.radius,
      distance: Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.radius),
    };
  const start = Math.hypot(x - edge.x0, y - edge.y0);
  const end = Math.hypot(x - edge.x1, y - edge.y1);
  return start <= end ? { at: 0, distance: start } : { at: sweep * circle.radius, distance: end };
}

import type { Contour } from "../../core/geometry/contour.ts";
import { contourEdges, edgeCircle } from "../../core/geometry/contourArcs.ts";
import type { Ring } from "../../core/geometry/ring.ts";

const round = (value: number): number => Math.round(value * 1000) / 1000;

/** SVG path of a contour, arcs kept, in its own coordinates (mm, y up: the drawing around it turns it over). */
export function contourPath(contour: Contour): string {
  const edges = contourEdges(contour);
  const first = edges[0];
  if (first === undefined) return "";
  const parts = [`M${round(first.x0)} ${round(first.y0)}`];
  for (const edge of edges) {
    const end = `${round(edge.x1)} ${round(edge.y1)}`;
    if (edge.bulge === 0) parts.push(`L${end}`);
    else {
      const { radius } = edgeCircle(edge);
      const r = round(radius);
      parts.push(`A${r} ${r} 0 ${Math.abs(edge.bulge) > 1 ? 1 : 0} ${edge.bulge > 0 ? 1 : 0} ${end}`);
    }
  }
  if (contour.closed) parts.push("Z");
  return parts.join("");
}

/** SVG path of a ring. */
export function ringPath(ring: Ring): string {
  let path = "";
  for (let i = 0; i < ring.length; i += 2)
    path += `${i === 0 ? "M" : "L"}${round(ring[i]!)} ${round(ring[i + 1]!)}`;
  return `${path}Z`;
}

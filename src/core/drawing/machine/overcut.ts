import type { Contour } from "../../geometry/contour.ts";
import { contourEdges, edgeCircle, flattenContour } from "../../geometry/contourArcs.ts";
import { segmentContour } from "../../geometry/contourShapes.ts";
import { signedArea } from "../../geometry/ring.ts";
import { tangents } from "./bladePath.ts";

/** A knife turns through smaller angles than this without leaving threads behind: sine of 15°. */
const SHARP = Math.sin(Math.PI / 12);

/**
 * Short cuts that carry both edges of every sharp corner on by `overcut` mm, so that the corner comes free. Only where
 * they run into waste: at the corners of an outline that point outward, and at those of a hole that point into it.
 */
export function cornerOvercuts(contour: Contour, overcut: number, isHole: boolean): Contour[] {
  if (overcut <= 0 || !contour.closed) return [];
  const edges = contourEdges(contour).filter((edge) => edge.x0 !== edge.x1 || edge.y0 !== edge.y1);
  const outward = Math.sign(signedArea(flattenContour(contour))) * (isHole ? -1 : 1);
  return edges.flatMap((edge, i): Contour[] => {
    const next = edges[(i + 1) % edges.length]!;
    const [, [inX, inY]] = tangents(edge);
    const [[outX, outY]] = tangents(next);
    const cross = inX * outY - inY * outX;
    const doubles = inX * outX + inY * outY < 0;
    if (cross * outward <= 0 || (Math.abs(cross) < SHARP && !doubles)) return [];
    const { x1: x, y1: y } = edge;
    return [
      segmentContour(x, y, x + inX * overcut, y + inY * overcut),
      segmentContour(x - outX * overcut, y - outY * overcut, x, y),
    ];
  });
}

/** A closed contour as an open one that goes on past its start by `overcut` mm along its first edge. */
export function overcutPath(contour: Contour, overcut: number): Contour {
  if (overcut <= 0 || !contour.closed) return contour;
  const { vertices } = contour;
  const first = contourEdges(contour)[0]!;
  const out = [...vertices, vertices[0]!, vertices[1]!];
  if (first.bulge === 0) {
    const length = Math.hypot(first.x1 - first.x0, first.y1 - first.y0);
    const share = Math.min(1, overcut / length);
    out.push(0, first.x0 + share * (first.x1 - first.x0), first.y0 + share * (first.y1 - first.y0), 0);
  } else {
    const { x, y, radius, start, sweep } = edgeCircle(first);
    const angle = Math.sign(sweep) * Math.min(Math.abs(sweep), overcut / radius);
    out.push(Math.tan(angle / 4), x + radius * Math.cos(start + angle), y + radius * Math.sin(start + angle), 0);
  }
  return { vertices: Float64Array.from(out), closed: false };
}

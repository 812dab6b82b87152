import type { Contour } from "../../geometry/contour.ts";
import { type ContourEdge, contourEdges, edgeCircle } from "../../geometry/contourArcs.ts";

/**
 * Where the holder of a drag knife must go so that its blade's tip, which trails `offset` behind, follows the
 * contour: straight cuts run on by the offset, the holder swings round each corner about it while the tip stays, and
 * arcs are taken a little wider. A closed contour ends where it began, blade turned as at the start.
 *
 * Units: mm. Exact for lines and arcs; the tip starts aligned with the first edge. O(edges).
 */
export function bladePath(contour: Contour, offset: number): Contour {
  if (!(offset >= 0)) throw new RangeError(`bladePath: an offset of 0 or more expected, got ${offset}`);
  const edges = contourEdges(contour).filter((edge) => edge.x0 !== edge.x1 || edge.y0 !== edge.y1);
  if (offset === 0 || edges.length === 0) return contour;
  const out: number[] = [];
  edges.forEach((edge, i) => {
    const [start, end] = tangents(edge);
    const lead = { x: edge.x0 + offset * start[0], y: edge.y0 + offset * start[1] };
    out.push(lead.x, lead.y, edge.bulge);
    const next = i + 1 < edges.length ? edges[i + 1]! : contour.closed ? edges[0]! : null;
    if (!next) {
      out.push(edge.x1 + offset * end[0], edge.y1 + offset * end[1], 0);
      return;
    }
    const [turn] = tangents(next);
    const cross = end[0] * turn[1] - end[1] * turn[0];
    const dot = end[0] * turn[0] + end[1] * turn[1];
    const angle = Math.atan2(cross, dot);
    // Swing round the corner; no vertex is needed where the path runs on smoothly.
    if (Math.abs(angle) > 1e-9) {
      out.push(edge.x1 + offset * end[0], edge.y1 + offset * end[1], Math.tan(angle / 4));
    }
  });
  if (contour.closed) out.push(out[0]!, out[1]!, 0);
  return { vertices: Float64Array.from(out), closed: false };
}

type Tangent = readonly [number, number];

/** Unit tangents at the start and at the end of an edge. */
export function tangents(edge: ContourEdge): readonly [Tangent, Tangent] {
  if (edge.bulge === 0) {
    const length = Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    const along = [(edge.x1 - edge.x0) / length, (edge.y1 - edge.y0) / length] as const;
    return [along, along];
  }
  const { start, sweep } = edgeCircle(edge);
  const turn = Math.sign(sweep);
  const at = (angle: number): Tangent => [-turn * Math.sin(angle), turn * Math.cos(angle)];
  return [at(start), at(start + sweep)];
}

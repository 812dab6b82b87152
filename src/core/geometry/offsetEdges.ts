import { offsetOf } from "./clipper.ts";
import type { Contour } from "./contour.ts";
import { type ContourEdge, contourEdges, edgeCircle, edgeDirection, flattenContour } from "./contourArcs.ts";
import { ringContour } from "./contourShapes.ts";
import { type CornerEnd, cornerEnds, type Vector } from "./cornerEnds.ts";
import { firstCrossing } from "./crossing.ts";
import { signedArea } from "./ring.ts";
import { unevenOffset } from "./unevenOffset.ts";

/** A sharp corner runs out to this multiple of the distance where the polygon library makes the outline. */
const MITRE_LIMIT = 3;

/** A contour whose edges were moved. */
export interface MovedContour {
  readonly contour: Contour;
  /**
   * For each edge of the first contour the corner of the moved one that its own edge leaves; null when the outline had
   * to be made of straight edges, where they are not told apart.
   */
  readonly starts: readonly number[] | null;
}

/**
 * A closed contour with every edge moved outward by its own width (inward where negative, all alike in sign):
 * straight edges stay straight, arcs stay arcs about the same centre, corners end as `ends` says (mitred when not
 * said; `ends[i]` is the corner that edge i leaves).
 *
 * Shapes: contour closed, counter-clockwise, simple. Where the moved edges would cross (narrow notches, corners that
 *         arcs turn into), the outline is made of straight edges by the polygon library instead, corners mitred.
 *         Null when nothing is left.
 * Units:  mm; chords of that substitute within 0.01 mm.
 * Errors: RangeError when a width is missing or not finite, or widths differ in sign.
 * Cost:   O(n²) in the flattened points, for the check that nothing crosses.
 */
export function offsetEdges(
  contour: Contour,
  widths: readonly number[],
  ends: readonly CornerEnd[] = [],
): MovedContour | null {
  const edges = contourEdges(contour);
  if (widths.length !== edges.length || !widths.every(Number.isFinite))
    throw new RangeError(
      `offsetEdges: a width for each of ${edges.length} edges was expected, got ${widths.length}`,
    );
  const inward = widths.some((width) => width < 0);
  if (inward && widths.some((width) => width > 0))
    throw new RangeError("offsetEdges: widths of one sign were expected");
  if (widths.every((width) => width === 0)) return { contour, starts: edges.map((_, i) => i) };
  const moved = movedEdges(edges, widths, ends);
  if (moved !== null && firstCrossing(flattenContour(moved.contour)) === null) return moved;
  const whole = polygonOffset(contour, widths);
  return whole === null ? null : { contour: whole, starts: null };
}

/** Outermost outline of the offset; a hole that the offset closes in is cloth that is kept. */
function polygonOffset(contour: Contour, widths: readonly number[]): Contour | null {
  const [width] = widths;
  const even = widths.every((one) => one === width);
  const parts = even
    ? offsetOf([flattenContour(contour)], width!, { kind: "miter", limit: MITRE_LIMIT })
    : unevenOffset(contour, widths);
  if (parts.length === 0) return null;
  const largest = parts.reduce((a, b) => (signedArea(b.outer) > signedArea(a.outer) ? b : a));
  return ringContour(largest.outer);
}

/** Every edge moved; null when a corner cannot be made or an edge is eaten up. */
function movedEdges(
  edges: readonly ContourEdge[],
  widths: readonly number[],
  ends: readonly CornerEnd[],
): MovedContour | null {
  const corners: Vector[][] = [];
  for (const [i, edge] of edges.entries()) {
    const before = edges.at(i - 1)!;
    const corner = cornerEnds(
      {
        at: [edge.x0, edge.y0],
        from: edgeDirection(before, 1),
        to: edgeDirection(edge, 0),
        before: widths.at(i - 1)!,
        after: widths[i]!,
        bentBefore: before.bulge !== 0,
        bentAfter: edge.bulge !== 0,
      },
      ends[i] ?? { kind: "mitred" },
    );
    // An arc moved towards its centre by its radius is gone.
    const inside = edge.bulge === 0 ? Infinity : -Math.sign(edge.bulge) * widths[i]!;
    if (corner === null || (edge.bulge !== 0 && edgeCircle(edge).radius <= inside)) return null;
    corners.push(corner);
  }
  const kept = edges.every((edge, i) => {
    const start = corners[i]!.at(-1)!;
    const end = corners[(i + 1) % corners.length]![0]!;
    return (end[0] - start[0]) * (edge.x1 - edge.x0) + (end[1] - start[1]) * (edge.y1 - edge.y0) > 0;
  });
  if (!kept) return null;
  const starts: number[] = [];
  let count = 0;
  for (const corner of corners) {
    count += corner.length;
    starts.push(count - 1);
  }
  const vertices = corners.flatMap((corner, i) =>
    corner.flatMap(([x, y], k) => [x, y, k === corner.length - 1 ? edges[i]!.bulge : 0]),
  );
  return { contour: { vertices: Float64Array.from(vertices), closed: true }, starts };
}

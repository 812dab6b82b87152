import type { Contour } from "../geometry/contour.ts";
import { type ContourEdge, contourEdges, flattenContour } from "../geometry/contourArcs.ts";
import { firstCrossing } from "../geometry/crossing.ts";

/** A shape opened out over a fold: the whole outline, and where the fold runs. */
export interface FoldedOut {
  readonly contour: Contour;
  /** Ends of the fold line. */
  readonly fold: readonly [number, number, number, number];
  /** The point's mirror image across the fold. */
  mirror(x: number, y: number): readonly [number, number];
}

/** Nearer to a straight line than this (sine of the turn), a corner on the fold is none. */
const STRAIGHT = 1e-9;

/**
 * The shape and its mirror image across edge `fold`, which must be straight with the whole shape on its left. Null
 * when the two halves touch anywhere else.
 */
export function foldOut(contour: Contour, fold: number): FoldedOut | null {
  const edges = contourEdges(contour);
  const line = edges[fold]!;
  const length = Math.hypot(line.x1 - line.x0, line.y1 - line.y0);
  const ux = (line.x1 - line.x0) / length;
  const uy = (line.y1 - line.y0) / length;
  const mirror = (x: number, y: number): readonly [number, number] => {
    const off = 2 * ((y - line.y0) * ux - (x - line.x0) * uy);
    return [x + off * uy, y - off * ux];
  };
  // From the fold's end round to its start, then the mirror image back again.
  const half = [...edges.slice(fold + 1), ...edges.slice(0, fold)];
  const back = half.toReversed().map((edge): ContourEdge => {
    const [x0, y0] = mirror(edge.x1, edge.y1);
    const [x1, y1] = mirror(edge.x0, edge.y0);
    // Reversed and mirrored: the arc keeps its sense.
    return { x0, y0, x1, y1, bulge: edge.bulge };
  });
  const whole = joined([...half, ...back]);
  if (firstCrossing(flattenContour(whole)) !== null) return null;
  return { contour: whole, fold: [line.x0, line.y0, line.x1, line.y1], mirror };
}

/** One contour of the edges, without corners where two straight edges run on in line. */
function joined(edges: readonly ContourEdge[]): Contour {
  const vertices = edges.flatMap((edge, i) => {
    const before = edges.at(i - 1)!;
    const cross = (before.x1 - before.x0) * (edge.y1 - edge.y0) - (before.y1 - before.y0) * (edge.x1 - edge.x0);
    const size =
      Math.hypot(before.x1 - before.x0, before.y1 - before.y0) * Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    const runsOn = before.bulge === 0 && edge.bulge === 0 && Math.abs(cross) < STRAIGHT * size;
    return runsOn ? [] : [edge.x0, edge.y0, edge.bulge];
  });
  return { vertices: Float64Array.from(vertices), closed: true };
}

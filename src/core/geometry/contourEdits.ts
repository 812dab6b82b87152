import { bulgeOfRise } from "./arcRise.ts";
import type { Contour } from "./contour.ts";
import { type ContourEdge, contourEdges } from "./contourArcs.ts";

/** A corner of an outline, mm. */
export interface Corner {
  readonly x: number;
  readonly y: number;
}

/** The corners of a contour in order. */
export function cornersOf({ vertices }: Contour): readonly Corner[] {
  const corners: Corner[] = [];
  for (let i = 0; i < vertices.length; i += 3) corners.push({ x: vertices[i]!, y: vertices[i + 1]! });
  return corners;
}

/** The contour with corner `index` at (x, y); arcs beside it keep their bulge. */
export function moveCorner(contour: Contour, index: number, x: number, y: number): Contour {
  const vertices = contour.vertices.slice();
  vertices[3 * index] = x;
  vertices[3 * index + 1] = y;
  return { ...contour, vertices };
}

/** The contour with a new corner `share` of the way along edge `index`; an arc becomes two of the same circle. */
export function addCorner(contour: Contour, index: number, share = 0.5): Contour {
  const edge = contourEdges(contour)[index]!;
  const [x, y] = edgePoint(edge, share);
  const bulge = (part: number) => (edge.bulge === 0 ? 0 : Math.tan(part * Math.atan(edge.bulge)));
  const before = [...contour.vertices.slice(0, 3 * index + 2), bulge(share)];
  const after = contour.vertices.slice(3 * index + 3);
  return { ...contour, vertices: Float64Array.from([...before, x, y, bulge(1 - share), ...after]) };
}

/** The contour without corner `index`, straight where it was; at least three corners stay. */
export function removeCorner(contour: Contour, index: number): Contour {
  const vertices = [...contour.vertices];
  if (vertices.length <= 9) return contour;
  vertices.splice(3 * index, 3);
  const before = (index === 0 ? vertices.length : 3 * index) - 1;
  vertices[before] = 0;
  return { ...contour, vertices: Float64Array.from(vertices) };
}

/** The contour with edge `index` rising by `rise` mm to its right; 0 is straight, half a circle the most. */
export function bowEdge(contour: Contour, index: number, rise: number): Contour {
  const { x0, y0, x1, y1 } = contourEdges(contour)[index]!;
  const vertices = contour.vertices.slice();
  const bulge = bulgeOfRise(Math.hypot(x1 - x0, y1 - y0), rise);
  vertices[3 * index + 2] = Math.max(-1, Math.min(1, bulge));
  return { ...contour, vertices };
}

/**
 * The contour with the ends of edge `index` so far apart, mm. Its end moves, and with it every corner that lies as far
 * out that way or further: a rectangle stays one. `fromEnd` keeps the end instead and moves what lies before the start.
 */
export function stretchEdge(contour: Contour, index: number, length: number, fromEnd = false): Contour {
  const { x0, y0, x1, y1 } = contourEdges(contour)[index]!;
  const now = Math.hypot(x1 - x0, y1 - y0);
  const [ux, uy] = [(x1 - x0) / now, (y1 - y0) / now];
  const more = (fromEnd ? -1 : 1) * (length - now);
  const along = (x: number, y: number) => (x - x0) * ux + (y - y0) * uy;
  const vertices = contour.vertices.slice();
  for (let i = 0; i < vertices.length; i += 3) {
    const at = along(vertices[i]!, vertices[i + 1]!);
    if (fromEnd ? at > AS_FAR : at < now - AS_FAR) continue;
    vertices[i] = vertices[i]! + more * ux;
    vertices[i + 1] = vertices[i + 1]! + more * uy;
  }
  return { ...contour, vertices };
}

/** Corners that lie as far out to within this move alike, mm. */
const AS_FAR = 1e-6;

/** The point `share` of the way along an edge, arcs kept. */
export function edgePoint({ x0, y0, x1, y1, bulge }: ContourEdge, share: number): readonly [number, number] {
  if (bulge === 0) return [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
  // From the start the chord to the point is sin(turned / 2) / sin(sweep / 2) of the whole one, turned off it by half
  // of what is left of the sweep.
  const sweep = 4 * Math.atan(bulge);
  const reach = Math.sin((share * sweep) / 2) / Math.sin(sweep / 2);
  const turn = -((1 - share) * sweep) / 2;
  const [c, s] = [reach * Math.cos(turn), reach * Math.sin(turn)];
  return [x0 + c * (x1 - x0) - s * (y1 - y0), y0 + s * (x1 - x0) + c * (y1 - y0)];
}

/** Number of the corner at a place; `known` when none is there. Outlines are renumbered when they are turned round. */
export function cornerAt(contour: Contour, place: Corner, known: number): number {
  const found = cornersOf(contour).findIndex(({ x, y }) => x === place.x && y === place.y);
  return found < 0 ? known : found;
}

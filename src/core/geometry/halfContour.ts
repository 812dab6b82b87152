import type { Contour } from "./contour.ts";
import { ahead, type ContourEdge, contourEdges, edgeCircle } from "./contourArcs.ts";

/** Nearer to the line than this, a point lies on it, mm. */
const ON_LINE = 1e-6;

/**
 * The part of a closed outline above the level line y = `level`, arcs kept. The closing edge, from the last vertex to
 * the first, runs along that line; walked counter-clockwise where the outline is.
 *
 * Null when the line does not part the outline in two: it misses it, or meets it more than twice. Cost O(edges).
 */
export function halfContour(contour: Contour, level: number): Contour | null {
  const parts = contourEdges(contour)
    .flatMap((edge) => partsAt(edge, level))
    .filter(({ x0, y0, x1, y1 }) => Math.hypot(x1 - x0, y1 - y0) > ON_LINE);
  const above = parts.map(isAbove(level));
  const starts = above.flatMap((is, i) => (is && !above.at(i - 1)! ? [i] : []));
  if (starts.length !== 1) return null;
  const vertices: number[] = [];
  let end: ContourEdge | null = null;
  for (let i = 0; i < parts.length; i++) {
    const at = (starts[0]! + i) % parts.length;
    if (!above[at]) break;
    end = parts[at]!;
    vertices.push(end.x0, end.y0, end.bulge);
  }
  if (end === null || Math.abs(end.y1 - level) > ON_LINE || Math.abs(vertices[1]! - level) > ON_LINE) return null;
  vertices[1] = level;
  vertices.push(end.x1, level, 0);
  return { vertices: Float64Array.from(vertices), closed: true };
}

function isAbove(level: number): (edge: ContourEdge) => boolean {
  return (edge) => {
    const [, middle] = pointOf(edge, 0.5);
    return middle > level + ON_LINE / 2;
  };
}

/** An edge cut where it crosses the line. */
function partsAt(edge: ContourEdge, level: number): ContourEdge[] {
  const cuts = crossings(edge, level)
    .filter((at) => at > 1e-12 && at < 1 - 1e-12)
    .sort((a, b) => a - b);
  const ends = [0, ...cuts, 1];
  return ends.slice(1).map((to, i): ContourEdge => {
    const from = ends[i]!;
    const [x0, y0] = from === 0 ? [edge.x0, edge.y0] : [pointOf(edge, from)[0], level];
    const [x1, y1] = to === 1 ? [edge.x1, edge.y1] : [pointOf(edge, to)[0], level];
    return { x0, y0, x1, y1, bulge: Math.tan((to - from) * Math.atan(edge.bulge)) };
  });
}

/** Shares of the way along an edge at which it crosses the line, or would if it went on. */
function crossings(edge: ContourEdge, level: number): number[] {
  const { y0, y1, bulge } = edge;
  if (bulge === 0) return [(level - y0) / (y1 - y0)];
  const { y, radius, start, sweep } = edgeCircle(edge);
  // No number where its circle does not reach the line.
  const rise = Math.asin((level - y) / radius);
  return [rise, Math.PI - rise].map((angle) => {
    return ahead(sweep > 0 ? angle - start : start - angle) / Math.abs(sweep);
  });
}

function pointOf(edge: ContourEdge, at: number): readonly [number, number] {
  const { x0, y0, x1, y1, bulge } = edge;
  if (bulge === 0) return [x0 + at * (x1 - x0), y0 + at * (y1 - y0)];
  const { x, y, radius, start, sweep } = edgeCircle(edge);
  return [x + radius * Math.cos(start + at * sweep), y + radius * Math.sin(start + at * sweep)];
}

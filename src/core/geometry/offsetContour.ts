import { offsetOf } from "./clipper.ts";
import type { Contour } from "./contour.ts";
import {
  type ContourEdge,
  contourEdges,
  edgeCircle,
  edgeDirection,
  flattenContour,
  startBeside,
} from "./contourArcs.ts";
import { ringContour } from "./contourShapes.ts";
import { firstCrossing } from "./crossing.ts";
import { signedArea } from "./ring.ts";

/** A corner sharper than this multiple of the distance is cut off square to its middle. */
const MITER_LIMIT = 3;
/** Edges whose directions differ by less than this (sine) run on without a corner. */
const STRAIGHT_ON = 1e-4;

type Vector = readonly [number, number];

/**
 * A closed contour moved outward by `distance` ≥ 0: straight edges stay straight, arcs stay arcs about the same
 * centre, outside corners are mitred.
 *
 * Shapes: contour closed, counter-clockwise, simple. Where the moved edges would cross (narrow notches, corners
 *         between arcs that bend inward), the offset is made of straight edges by the polygon library instead.
 * Units:  mm; chords of that substitute within 0.01 mm.
 * Errors: RangeError when `distance` is negative or not finite.
 * Cost:   O(n²) in the flattened points, for the check that nothing crosses.
 */
export function offsetContour(contour: Contour, distance: number): Contour {
  if (!(distance >= 0 && Number.isFinite(distance)))
    throw new RangeError(`offsetContour: a distance of 0 or more was expected, got ${distance}`);
  if (distance === 0) return contour;
  const moved = movedEdges(contourEdges(contour), distance);
  if (moved !== null && firstCrossing(flattenContour(moved)) === null) return moved;
  return polygonOffset(contour, distance);
}

/** Outermost outline of the offset; a hole that the offset closes in is cloth that is kept. */
function polygonOffset(contour: Contour, distance: number): Contour {
  const join = { kind: "miter", limit: MITER_LIMIT } as const;
  const parts = offsetOf([flattenContour(contour)], distance, join);
  const largest = parts.reduce((a, b) => (signedArea(b.outer) > signedArea(a.outer) ? b : a));
  return ringContour(largest.outer);
}

/** Every edge moved, joined at mitred corners; null when a corner cannot be made or an edge is eaten up. */
function movedEdges(edges: readonly ContourEdge[], distance: number): Contour | null {
  const corners: Vector[][] = [];
  for (const [i, edge] of edges.entries()) {
    const corner = cornerPoints(edges.at(i - 1)!, edge, distance);
    if (corner === null || (edge.bulge < 0 && edgeCircle(edge).radius <= distance)) return null;
    corners.push(corner);
  }
  const kept = edges.every((edge, i) => {
    const start = corners[i]!.at(-1)!;
    const end = corners[(i + 1) % corners.length]![0]!;
    return (end[0] - start[0]) * (edge.x1 - edge.x0) + (end[1] - start[1]) * (edge.y1 - edge.y0) > 0;
  });
  if (!kept) return null;
  const vertices = corners.flatMap((corner, i) =>
    corner.flatMap(([x, y], k) => [x, y, k === corner.length - 1 ? edges[i]!.bulge : 0]),
  );
  return { vertices: Float64Array.from(vertices), closed: true };
}

/** Points of the offset round one corner, in order; null when a corner turns in between arcs. */
function cornerPoints(before: ContourEdge, after: ContourEdge, distance: number): Vector[] | null {
  const from = edgeDirection(before, 1);
  const to = edgeDirection(after, 0);
  const cross = from[0] * to[1] - from[1] * to[0];
  const dot = from[0] * to[0] + from[1] * to[1];
  const end = startBeside(after, from, distance);
  const start = startBeside(after, to, distance);
  if (Math.abs(cross) < STRAIGHT_ON && dot > 0) return [start];
  const straight = before.bulge === 0 && after.bulge === 0;
  if (cross < 0 && !straight) return null;
  const half = Math.sqrt((1 + dot) / 2);
  if (cross > 0 && half * MITER_LIMIT < 1) return bevelled(before, after, end, start, from, to, distance);
  const reach = distance * (cross / (1 + dot));
  const tip: Vector = [end[0] + from[0] * reach, end[1] + from[1] * reach];
  return [...(before.bulge === 0 ? [] : [end]), tip, ...(after.bulge === 0 ? [] : [start])];
}

/** A sharp corner cut off at the distance from its point: a quarter of the turn on either side. */
function bevelled(
  before: ContourEdge,
  after: ContourEdge,
  end: Vector,
  start: Vector,
  from: Vector,
  to: Vector,
  distance: number,
): Vector[] {
  const turn = Math.acos(Math.max(-1, Math.min(1, from[0] * to[0] + from[1] * to[1])));
  const reach = distance * Math.tan(turn / 4);
  return [
    ...(before.bulge === 0 ? [] : [end]),
    [end[0] + from[0] * reach, end[1] + from[1] * reach],
    [start[0] - to[0] * reach, start[1] - to[1] * reach],
    ...(after.bulge === 0 ? [] : [start]),
  ];
}

import type { Box } from "./box.ts";
import type { Contour } from "./contour.ts";
import { type Pose, turnCosSin } from "./pose.ts";
import type { Ring } from "./ring.ts";

/** One edge of a contour: from, to and bulge. */
export interface ContourEdge {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly bulge: number;
}

/** An arc's circle: centre, radius, start angle and signed sweep in radians (positive counter-clockwise). */
export interface ArcCircle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

/** The edges in order; a closed contour has as many edges as vertices, an open one has one less. */
export function contourEdges(contour: Contour): ContourEdge[] {
  const { vertices, closed } = contour;
  const count = vertices.length / 3;
  const edges: ContourEdge[] = [];
  for (let i = 0; i < (closed ? count : count - 1); i++) {
    const a = 3 * i;
    const b = 3 * ((i + 1) % count);
    edges.push({
      x0: vertices[a]!,
      y0: vertices[a + 1]!,
      x1: vertices[b]!,
      y1: vertices[b + 1]!,
      bulge: vertices[a + 2]!,
    });
  }
  return edges;
}

/**
 * Circle of an arc edge; the edge must have a bulge other than 0 and ends apart from each other.
 * Source: bulge b = tan(sweep / 4); the centre lies (1 − b²) / (4 b) chords to the left of the chord's middle.
 */
export function edgeCircle(edge: ContourEdge): ArcCircle {
  const { x0, y0, x1, y1, bulge } = edge;
  const off = (1 - bulge * bulge) / (4 * bulge);
  const x = (x0 + x1) / 2 - off * (y1 - y0);
  const y = (y0 + y1) / 2 + off * (x1 - x0);
  return {
    x,
    y,
    radius: (Math.hypot(x1 - x0, y1 - y0) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    start: Math.atan2(y0 - y, x0 - x),
    sweep: 4 * Math.atan(bulge),
  };
}

/** Unit direction of an edge at its start (0) or end (1): an arc leaves its chord by half its sweep. */
export function edgeDirection({ x0, y0, x1, y1, bulge }: ContourEdge, end: 0 | 1): readonly [number, number] {
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const turn = (end === 0 ? -2 : 2) * Math.atan(bulge);
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const x = (x1 - x0) / chord;
  const y = (y1 - y0) / chord;
  return [c * x - s * y, s * x + c * y];
}

/** Where an edge starts, moved by `distance` to the right of `along`: outward for a counter-clockwise contour. */
export function startBeside(
  edge: ContourEdge,
  along: readonly [number, number],
  distance: number,
): readonly [number, number] {
  return [edge.x0 + along[1] * distance, edge.y0 - along[0] * distance];
}

/** An angle in radians as far as it lies ahead: from 0 up to a full turn. */
export function ahead(angle: number): number {
  const full = 2 * Math.PI;
  return ((angle % full) + full) % full;
}

/** The contour as it lies at `pose`: mirrored in its y axis if asked, turned, shifted. Arcs stay arcs. */
export function poseContour(contour: Contour, pose: Pose): Contour {
  const [c, s] = turnCosSin(pose.turnDeg);
  const flip = pose.mirrored ? -1 : 1;
  const { vertices } = contour;
  const out = new Float64Array(vertices.length);
  for (let i = 0; i < vertices.length; i += 3) {
    const x = flip * vertices[i]!;
    const y = vertices[i + 1]!;
    out[i] = c * x - s * y + pose.x;
    out[i + 1] = s * x + c * y + pose.y;
    out[i + 2] = flip * vertices[i + 2]!;
  }
  return { vertices: out, closed: contour.closed };
}

/**
 * The contour as points `[x0, y0, x1, y1, …]`, arcs cut into chords that stay within `tolerance` mm of them.
 * A closed contour is not repeated at its end. Cost O(points).
 */
export function flattenContour(contour: Contour, tolerance = 0.01): Ring {
  const points: number[] = [];
  const edges = contourEdges(contour);
  for (const edge of edges) {
    points.push(edge.x0, edge.y0);
    if (edge.bulge === 0) continue;
    const dx = edge.x1 - edge.x0;
    const dy = edge.y1 - edge.y0;
    const chord = Math.hypot(dx, dy);
    const sweep = 4 * Math.atan(edge.bulge);
    // Chords from the start reach chord · sin(turned / 2) / sin(sweep / 2): nothing large is taken from anything
    // large, as it would be from the centre of an arc that hardly bows.
    const full = Math.sin(sweep / 2);
    const parts = chordsOfArc(chord, edge.bulge, tolerance);
    for (let i = 1; i < parts; i++) {
      const half = (sweep * i) / (2 * parts);
      const reach = Math.sin(half) / full;
      const c = reach * Math.cos(half - sweep / 2);
      const s = reach * Math.sin(half - sweep / 2);
      points.push(edge.x0 + c * dx - s * dy, edge.y0 + s * dx + c * dy);
    }
  }
  const last = edges.at(-1);
  if (!contour.closed && last) points.push(last.x1, last.y1);
  return Float64Array.from(points);
}

/**
 * How many equal chords keep within `tolerance` of an arc, at least two.
 * A chord over an angle a lies 2 r sin²(a / 4) inside its arc of radius r = chord (1 + b²) / (4 b).
 */
function chordsOfArc(chord: number, bulge: number, tolerance: number): number {
  const b = Math.abs(bulge);
  const toleranceOverRadius = (tolerance * 4 * b) / (chord * (1 + b * b));
  const step = 4 * Math.asin(Math.sqrt(toleranceOverRadius / 2));
  const parts = Math.ceil((4 * Math.atan(b)) / step);
  // Smallest bulges come to 0 over 0; ends on one point to a step of nothing; to a tolerance wider than the circle
  // there is no step.
  return Number.isFinite(parts) ? Math.max(2, parts) : 2;
}

/** Exact bounding box, arcs included; empty (`minX > maxX`) when there is no vertex. */
export function contourBox(contour: Contour): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  const take = (x: number, y: number): void => {
    box.minX = Math.min(box.minX, x);
    box.maxX = Math.max(box.maxX, x);
    box.minY = Math.min(box.minY, y);
    box.maxY = Math.max(box.maxY, y);
  };
  for (let i = 0; i < contour.vertices.length; i += 3) take(contour.vertices[i]!, contour.vertices[i + 1]!);
  for (const edge of contourEdges(contour)) {
    if (edge.bulge === 0) continue;
    const { x, y, radius, start, sweep } = edgeCircle(edge);
    for (let quarter = 0; quarter < 4; quarter++) {
      const turn = (quarter * Math.PI) / 2 - start;
      if (ahead(sweep > 0 ? turn : -turn) > Math.abs(sweep)) continue;
      take(x + radius * Math.round(Math.cos(turn + start)), y + radius * Math.round(Math.sin(turn + start)));
    }
  }
  return box;
}

import type { Contour } from "./contour.ts";
import {
  type ArcCircle,
  ahead,
  type ContourEdge,
  contourEdges,
  edgeCircle,
  edgeDirection,
  startBeside,
} from "./contourArcs.ts";

/** A corner may reach this many distances out before it is rounded. */
const MITER_LIMIT = 4;
/** Tangents this near to each other run on without a corner (sine of the angle). */
const SMOOTH = 1e-7;

/** An edge moved sideways: a line through (x, y) along (dx, dy), or a circle. */
interface Carrier {
  readonly line: { readonly x: number; readonly y: number; readonly dx: number; readonly dy: number } | null;
  readonly circle: { readonly x: number; readonly y: number; readonly radius: number } | null;
  readonly edge: ContourEdge;
  readonly arc: ArcCircle | null;
}

/**
 * A closed counter-clockwise contour moved outward by `distance` (inward when negative); arcs stay arcs, straight
 * corners stay sharp up to four distances out, else they are rounded.
 *
 * Units:  mm; exact but for rounding.
 * Errors: null when an edge would turn round or vanish: the distance is too large for the outline's detail.
 * Cost:   O(edges). For distances such as a kerf or a blade, far smaller than the outline's features.
 */
export function kerfContour(contour: Contour, distance: number): Contour | null {
  if (!contour.closed) throw new RangeError("kerfContour: a closed contour expected");
  const carriers: Carrier[] = [];
  for (const edge of contourEdges(contour)) {
    if (edge.x0 === edge.x1 && edge.y0 === edge.y1) continue;
    const carrier = moved(edge, distance);
    if (!carrier) return null;
    carriers.push(carrier);
  }
  const joints = carriers.map((next, i) => joint(carriers.at(i - 1)!, next, distance));
  const out: number[] = [];
  for (const [i, carrier] of carriers.entries()) {
    const from = joints[i]!;
    const to = joints[(i + 1) % joints.length]!;
    if (!from || !to) return null;
    if (from.round !== null) out.push(from.before[0], from.before[1], from.round);
    const bulge = movedBulge(carrier, from.after, to.before);
    if (bulge === null) return null;
    out.push(from.after[0], from.after[1], bulge);
  }
  return { vertices: Float64Array.from(out), closed: true };
}

function moved(edge: ContourEdge, distance: number): Carrier | null {
  if (edge.bulge === 0) {
    const along = edgeDirection(edge, 0);
    const [x, y] = startBeside(edge, along, distance);
    return { line: { x, y, dx: along[0], dy: along[1] }, circle: null, edge, arc: null };
  }
  const arc = edgeCircle(edge);
  const radius = arc.radius + Math.sign(edge.bulge) * distance;
  if (radius <= 1e-9) return null;
  return { line: null, circle: { x: arc.x, y: arc.y, radius }, edge, arc };
}

type Point = readonly [number, number];

/** Where two moved edges meet: one point, or two with a round corner between them. */
interface Joint {
  readonly before: Point;
  readonly after: Point;
  /** Bulge of the round corner, null for a point. */
  readonly round: number | null;
}

function joint(previous: Carrier, next: Carrier, distance: number): Joint | null {
  const corner: Point = [next.edge.x0, next.edge.y0];
  const from = edgeDirection(previous.edge, 1);
  const to = edgeDirection(next.edge, 0);
  const cross = from[0] * to[1] - from[1] * to[0];
  const dot = from[0] * to[0] + from[1] * to[1];
  const before = startBeside(next.edge, from, distance);
  if (Math.abs(cross) < SMOOTH && dot > 0) return { before, after: before, round: null };
  const opening = cross * distance > 0;
  const meeting = nearest(meetings(previous, next), corner);
  const reach = meeting && Math.hypot(meeting[0] - corner[0], meeting[1] - corner[1]);
  if (meeting && reach !== null && reach <= MITER_LIMIT * Math.abs(distance)) {
    return { before: meeting, after: meeting, round: null };
  }
  if (!opening) return null;
  const angle = Math.atan2(cross, dot);
  return { before, after: startBeside(next.edge, to, distance), round: Math.tan(angle / 4) };
}

function nearest(points: readonly Point[], to: Point): Point | null {
  let best: Point | null = null;
  let least = Infinity;
  for (const point of points) {
    const away = Math.hypot(point[0] - to[0], point[1] - to[1]);
    if (away < least) {
      least = away;
      best = point;
    }
  }
  return best;
}

/** Points two carriers share. */
function meetings(a: Carrier, b: Carrier): Point[] {
  if (a.line && b.line) {
    const det = a.line.dx * b.line.dy - a.line.dy * b.line.dx;
    if (Math.abs(det) < 1e-12) return [];
    const t = ((b.line.x - a.line.x) * b.line.dy - (b.line.y - a.line.y) * b.line.dx) / det;
    return [[a.line.x + t * a.line.dx, a.line.y + t * a.line.dy]];
  }
  if (a.line && b.circle) return lineCircle(a.line, b.circle);
  if (b.line && a.circle) return lineCircle(b.line, a.circle);
  return circleCircle(a.circle!, b.circle!);
}

function lineCircle(line: NonNullable<Carrier["line"]>, circle: NonNullable<Carrier["circle"]>): Point[] {
  const along = (circle.x - line.x) * line.dx + (circle.y - line.y) * line.dy;
  const footX = line.x + along * line.dx;
  const footY = line.y + along * line.dy;
  const off2 = (circle.x - footX) ** 2 + (circle.y - footY) ** 2;
  const half2 = circle.radius ** 2 - off2;
  if (half2 < 0) return [];
  const half = Math.sqrt(half2);
  return [half, -half].map((t) => [footX + t * line.dx, footY + t * line.dy] as const);
}

function circleCircle(a: NonNullable<Carrier["circle"]>, b: NonNullable<Carrier["circle"]>): Point[] {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const between = Math.hypot(dx, dy);
  if (between < 1e-12) return [];
  const along = (a.radius ** 2 - b.radius ** 2 + between ** 2) / (2 * between);
  const half2 = a.radius ** 2 - along ** 2;
  if (half2 < 0) return [];
  const half = Math.sqrt(half2);
  const [ux, uy] = [dx / between, dy / between];
  return [half, -half].map((t) => [a.x + along * ux - t * uy, a.y + along * uy + t * ux] as const);
}

/** Bulge of a moved edge between its new ends; null when the edge has turned round or vanished. */
function movedBulge(carrier: Carrier, from: Point, to: Point): number | null {
  if (carrier.line) {
    const ahead = (to[0] - from[0]) * carrier.line.dx + (to[1] - from[1]) * carrier.line.dy;
    return ahead > 0 ? 0 : null;
  }
  const { x, y } = carrier.circle!;
  const turn = Math.sign(carrier.edge.bulge);
  const sweep = ahead(turn * (Math.atan2(to[1] - y, to[0] - x) - Math.atan2(from[1] - y, from[0] - x)));
  // An arc that lost its whole sweep comes out as nearly a full turn.
  if (sweep > Math.abs(carrier.arc!.sweep) + Math.PI) return null;
  return turn * Math.tan(sweep / 4);
}

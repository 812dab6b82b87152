import type { Contour } from "../geometry/contour.ts";
import { chordRuns } from "./chordRuns.ts";
import type { ArcPart, BezierPart, Curve, StraightPart } from "./curve.ts";
import { partStarts } from "./curve.ts";
import { bezierAt } from "./measureCurve.ts";

/** A point on a curve with the unit direction there. */
interface Station {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** A stretch of a curve that can be asked for its points; t from 0 to 1. */
type Stretch = (t: number) => Station;

const MOST_HALVINGS = 10;

/**
 * The curve as straight edges and arcs: circles exactly as they are, bows that were cut into chords put together again,
 * every other bow by pairs of arcs that join without a corner; all within `tolerance` mm of what is drawn.
 * Source: biarcs through end points and end directions (Bolton 1975, Computer-Aided Design 7(4)), halved until near.
 * Cost: O(arcs), at most 2^11 a part.
 */
export function fitArcs(curve: Curve, tolerance: number): Contour {
  const starts = partStarts(curve);
  const out: number[] = [curve.x, curve.y];
  for (let i = 0; i < curve.parts.length; i++) {
    const part = curve.parts[i]!;
    const [x, y] = starts[i]!;
    if (part.kind === "straight") {
      const strokes = straightFrom(curve, i);
      const run = [[x, y] as const, ...strokes.map((stroke) => [stroke.x, stroke.y] as const)];
      for (const { to, bulge } of chordRuns(run, tolerance)) out.push(bulge, ...run[to]!);
      i += strokes.length - 1;
    } else if (part.kind === "arc" && isCircle(part)) pushCircle(part, out);
    else if (part.kind === "arc") {
      const quarters = Math.max(1, Math.ceil(Math.abs(part.sweep) / (Math.PI / 2)));
      for (let q = 0; q < quarters; q++)
        fitStretch(ellipseStretch(part, q / quarters, (q + 1) / quarters), 0, 1, tolerance, 0, out);
    } else fitBezier(x, y, part, tolerance, out);
  }
  return finished(out, curve.closed);
}

/** The straight parts from one on, up to the first that is not. */
function straightFrom(curve: Curve, from: number): readonly StraightPart[] {
  let to = from;
  while (curve.parts[to]?.kind === "straight") to++;
  return curve.parts.slice(from, to) as readonly StraightPart[];
}

/** `[x, y, b, x, y, b, …, x, y]` → vertices; the last point of a closed contour is its first again, or leads to it. */
function finished(out: number[], closed: boolean): Contour {
  const n = out.length;
  if (closed && n > 5 && Math.hypot(out[n - 2]! - out[0]!, out[n - 1]! - out[1]!) < 1e-6) out.length -= 2;
  else out.push(0);
  return { vertices: Float64Array.from(out), closed };
}

function isCircle({ ux, uy, vx, vy }: ArcPart): boolean {
  const u = Math.hypot(ux, uy);
  const v = Math.hypot(vx, vy);
  return Math.abs(u - v) <= 1e-7 * u && Math.abs(ux * vx + uy * vy) <= 1e-7 * u * v;
}

/** Arcs of at most half a turn, as a bulge is kept within 1. */
function pushCircle(part: ArcPart, out: number[]): void {
  const pieces = Math.max(1, Math.ceil(Math.abs(part.sweep) / Math.PI - 1e-9));
  const hand = part.ux * part.vy - part.uy * part.vx < 0 ? -1 : 1;
  const bulge = hand * Math.tan(part.sweep / pieces / 4);
  for (let i = 1; i <= pieces; i++) {
    const { x, y } = i === pieces ? part : ellipseAt(part, i / pieces);
    out.push(bulge, x, y);
  }
}

function ellipseAt(part: ArcPart, share: number): Station {
  const t = part.from + part.sweep * share;
  const c = Math.cos(t);
  const s = Math.sin(t);
  const hand = part.sweep < 0 ? -1 : 1;
  const dx = hand * (part.vx * c - part.ux * s);
  const dy = hand * (part.vy * c - part.uy * s);
  const speed = Math.hypot(dx, dy) || 1;
  return {
    x: part.centreX + part.ux * c + part.vx * s,
    y: part.centreY + part.uy * c + part.vy * s,
    dx: dx / speed,
    dy: dy / speed,
  };
}

function ellipseStretch(part: ArcPart, from: number, to: number): Stretch {
  return (t) => {
    const share = from + (to - from) * t;
    const station = ellipseAt(part, share);
    return share === 1 ? { ...station, x: part.x, y: part.y } : station;
  };
}

function fitBezier(x0: number, y0: number, part: BezierPart, tolerance: number, out: number[]): void {
  const { x1, y1, x2, y2, x, y } = part;
  const stretch: Stretch = (t) => {
    const s = 1 - t;
    let dx = s * s * (x1 - x0) + 2 * s * t * (x2 - x1) + t * t * (x - x2);
    let dy = s * s * (y1 - y0) + 2 * s * t * (y2 - y1) + t * t * (y - y2);
    // A handle that lies on its own point: the curve leaves towards the next one.
    if (Math.hypot(dx, dy) < 1e-9) {
      dx = t < 0.5 ? x2 - x0 : x - x1;
      dy = t < 0.5 ? y2 - y0 : y - y1;
      if (Math.hypot(dx, dy) < 1e-9) [dx, dy] = [x - x0, y - y0];
    }
    const speed = Math.hypot(dx, dy) || 1;
    const px = t === 1 ? x : bezierAt(x0, x1, x2, x, t);
    const py = t === 1 ? y : bezierAt(y0, y1, y2, y, t);
    return { x: px, y: py, dx: dx / speed, dy: dy / speed };
  };
  fitStretch(stretch, 0, 1, tolerance, 0, out);
}

/** One straight line, one pair of arcs, or two halves that are fitted each. */
function fitStretch(at: Stretch, from: number, to: number, tolerance: number, depth: number, out: number[]): void {
  const a = at(from);
  const b = at(to);
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const checks = [1 / 8, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 7 / 8].map((share) => at(from + (to - from) * share));
  const isFlat = checks.every((point) => fromChord(point, a, b) <= Math.min(tolerance, 1e-3));
  if (isFlat || depth >= MOST_HALVINGS) {
    if (chord > 1e-9) out.push(0, b.x, b.y);
    return;
  }
  const pair = chord > 1e-9 ? biarc(a, b) : null;
  if (pair && checks.every((point) => Math.min(fromArc(point, pair[0]), fromArc(point, pair[1])) <= tolerance)) {
    for (const arc of pair) out.push(arc.bulge, arc.x1, arc.y1);
    return;
  }
  const middle = (from + to) / 2;
  fitStretch(at, from, middle, tolerance, depth + 1, out);
  fitStretch(at, middle, to, tolerance, depth + 1, out);
}

interface BulgeArc {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly bulge: number;
}

/** Two arcs from a to b that leave and arrive in the given directions, their handles of one length; null when wild. */
function biarc(a: Station, b: Station): readonly [BulgeArc, BulgeArc] | null {
  const vx = b.x - a.x;
  const vy = b.y - a.y;
  const tx = a.dx + b.dx;
  const ty = a.dy + b.dy;
  const dot = a.dx * b.dx + a.dy * b.dy;
  if (dot < 0) return null;
  // d solves |v|² − 2 d v·t − 2 d² (1 − a·b)… = 0: both handles equally long.
  const vt = vx * tx + vy * ty;
  const quadratic = 2 * (1 - dot);
  const vv = vx * vx + vy * vy;
  const d = quadratic < 1e-12 ? vv / (2 * vt) : (Math.sqrt(vt * vt + quadratic * vv) - vt) / quadratic;
  if (!(d > 0) || d > 10 * Math.sqrt(vv)) return null;
  const mx = (a.x + b.x + d * (a.dx - b.dx)) / 2;
  const my = (a.y + b.y + d * (a.dy - b.dy)) / 2;
  const first = arcFrom(a.x, a.y, a.dx, a.dy, mx, my);
  const back = arcFrom(b.x, b.y, -b.dx, -b.dy, mx, my);
  if (first === null || back === null) return null;
  return [first, { x0: mx, y0: my, x1: b.x, y1: b.y, bulge: -back.bulge }];
}

/** The arc that leaves (x0, y0) in a direction and ends in (x1, y1); at most half a turn, else null. */
function arcFrom(x0: number, y0: number, dx: number, dy: number, x1: number, y1: number): BulgeArc | null {
  const cx = x1 - x0;
  const cy = y1 - y0;
  // The chord stands half the arc's angle off the direction it leaves in.
  const half = Math.atan2(dx * cy - dy * cx, dx * cx + dy * cy);
  return Math.abs(half) > Math.PI / 2 ? null : { x0, y0, x1, y1, bulge: Math.tan(half / 2) };
}

function fromChord(point: Station, a: Station, b: Station): number {
  const vx = b.x - a.x;
  const vy = b.y - a.y;
  const length = vx * vx + vy * vy;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((point.x - a.x) * vx + (point.y - a.y) * vy) / length));
  return Math.hypot(point.x - a.x - t * vx, point.y - a.y - t * vy);
}

/** Distance of a point from an arc edge: from its circle where it lies over the arc, else from its nearer end. */
function fromArc(point: Station, arc: BulgeArc): number {
  const { x0, y0, x1, y1, bulge } = arc;
  const ends = Math.min(Math.hypot(point.x - x0, point.y - y0), Math.hypot(point.x - x1, point.y - y1));
  if (Math.abs(bulge) < 1e-9) {
    const station = { dx: 0, dy: 0 };
    return fromChord(point, { x: x0, y: y0, ...station }, { x: x1, y: y1, ...station });
  }
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centreX = (x0 + x1) / 2 - off * (y1 - y0);
  const centreY = (y0 + y1) / 2 + off * (x1 - x0);
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const sweep = 4 * Math.atan(bulge);
  const start = Math.atan2(y0 - centreY, x0 - centreX);
  const turn = Math.atan2(point.y - centreY, point.x - centreX) - start;
  const ahead = sweep > 0 ? turn : -turn;
  const full = 2 * Math.PI;
  const isOver = ((ahead % full) + full) % full <= Math.abs(sweep);
  return isOver ? Math.abs(Math.hypot(point.x - centreX, point.y - centreY) - radius) : ends;
}

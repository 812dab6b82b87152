import type { Box } from "../geometry/box.ts";
import { type ArcPart, type BezierPart, type Curve, curveEnd, partStarts } from "./curve.ts";

/**
 * Signed area in mm² of a closed curve (an open one closed straight), positive when it runs counter-clockwise: exact,
 * by Green's theorem. A Bézier's share is the integral of its cubic, an ellipse's its sector.
 */
export function curveArea(curve: Curve): number {
  const starts = partStarts(curve);
  let twice = 0;
  for (const [i, part] of curve.parts.entries()) {
    // About the start of the curve: numbers stay as small as the drawn thing.
    const [px, py] = starts[i]!;
    const ax = px - curve.x;
    const ay = py - curve.y;
    const bx = part.x - curve.x;
    const by = part.y - curve.y;
    if (part.kind === "straight") twice += ax * by - ay * bx;
    else if (part.kind === "bezier") twice += twiceBezierArea(ax, ay, part, curve.x, curve.y);
    else {
      const cx = part.centreX - curve.x;
      const cy = part.centreY - curve.y;
      twice += (part.ux * part.vy - part.uy * part.vx) * part.sweep + cx * (by - ay) - cy * (bx - ax);
    }
  }
  return twice / 2;
}

/** Twice the area that a cubic sweeps about the origin: ∫ x dy − y dx of its Bernstein form. */
function twiceBezierArea(ax: number, ay: number, part: BezierPart, ox: number, oy: number): number {
  const x1 = part.x1 - ox;
  const y1 = part.y1 - oy;
  const x2 = part.x2 - ox;
  const y2 = part.y2 - oy;
  const x3 = part.x - ox;
  const y3 = part.y - oy;
  const cross = (px: number, py: number, qx: number, qy: number): number => px * qy - py * qx;
  return (
    (6 * cross(ax, ay, x1, y1) +
      3 * cross(ax, ay, x2, y2) +
      cross(ax, ay, x3, y3) +
      3 * cross(x1, y1, x2, y2) +
      3 * cross(x1, y1, x3, y3) +
      6 * cross(x2, y2, x3, y3)) /
    10
  );
}

/** Exact bounding box of a curve. */
export function curveBox(curve: Curve): Box {
  const starts = partStarts(curve);
  const xs = [curve.x];
  const ys = [curve.y];
  for (const [i, part] of curve.parts.entries()) {
    xs.push(part.x);
    ys.push(part.y);
    const [px, py] = starts[i]!;
    if (part.kind === "bezier") {
      xs.push(...bezierTurns(px, part.x1, part.x2, part.x));
      ys.push(...bezierTurns(py, part.y1, part.y2, part.y));
    } else if (part.kind === "arc") {
      xs.push(...arcTurns(part.centreX, part.ux, part.vx, part));
      ys.push(...arcTurns(part.centreY, part.uy, part.vy, part));
    }
  }
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));
  return { minX: least(xs), minY: least(ys), maxX: most(xs), maxY: most(ys) };
}

/** Values of a cubic in one coordinate where it turns back. */
function bezierTurns(a: number, b: number, c: number, d: number): number[] {
  const qa = d - 3 * c + 3 * b - a;
  const qb = 2 * (c - 2 * b + a);
  const qc = b - a;
  return quadraticRoots(qa, qb, qc)
    .filter((t) => t > 0 && t < 1)
    .map((t) => bezierAt(a, b, c, d, t));
}

/** One coordinate of a cubic Bézier at t. */
export function bezierAt(a: number, b: number, c: number, d: number, t: number): number {
  const s = 1 - t;
  return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}

/** Real roots of a t² + b t + c, in the form that does not lose digits (Press et al., Numerical Recipes, 5.6). */
function quadraticRoots(a: number, b: number, c: number): number[] {
  const under = b * b - 4 * a * c;
  if (under < 0) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(under)) / 2;
  const roots = [];
  if (a !== 0) roots.push(q / a);
  if (q !== 0) roots.push(c / q);
  return roots;
}

/** Values of c + u cos t + v sin t at its two turns, where they lie on the arc. */
function arcTurns(c: number, u: number, v: number, { from, sweep }: ArcPart): number[] {
  const reach = Math.hypot(u, v);
  const turn = Math.atan2(v, u);
  return [turn, turn + Math.PI].flatMap((t, i) =>
    onSweep(t, from, sweep) ? [c + (i === 0 ? reach : -reach)] : [],
  );
}

function onSweep(t: number, from: number, sweep: number): boolean {
  const full = 2 * Math.PI;
  const ahead = sweep > 0 ? t - from : from - t;
  return ((ahead % full) + full) % full <= Math.abs(sweep);
}

/**
 * Points `[x0, y0, x1, y1, …]` along a curve whose chords stay within `tolerance` of it. A closed curve's start is
 * not repeated. Cost O(points); a part gives at most `most` of them.
 */
export function flattenCurve(curve: Curve, tolerance: number, most = 2000): number[] {
  const starts = partStarts(curve);
  const points = [curve.x, curve.y];
  for (const [i, part] of curve.parts.entries()) {
    const [px, py] = starts[i]!;
    if (part.kind === "bezier") flattenBezier(px, py, part, tolerance, most, points);
    else if (part.kind === "arc") flattenArc(part, tolerance, most, points);
    points.push(part.x, part.y);
  }
  const [x, y] = curveEnd(curve);
  if (curve.closed && points.length > 2 && Math.hypot(x - curve.x, y - curve.y) < 1e-9) points.length -= 2;
  return points;
}

/**
 * Equal steps of t: a chord over h of t strays by at most h²/8 of the greatest second derivative, which for a cubic
 * stands at one of its ends. (Standard bound of linear interpolation.)
 */
function flattenBezier(
  px: number,
  py: number,
  part: BezierPart,
  tolerance: number,
  most: number,
  points: number[],
): void {
  const { x1, y1, x2, y2, x, y } = part;
  const first = Math.hypot(px - 2 * x1 + x2, py - 2 * y1 + y2);
  const second = Math.hypot(x1 - 2 * x2 + x, y1 - 2 * y2 + y);
  const steps = Math.min(most, Math.max(1, Math.ceil(Math.sqrt((6 * Math.max(first, second)) / (8 * tolerance)))));
  for (let i = 1; i < steps; i++)
    points.push(bezierAt(px, x1, x2, x, i / steps), bezierAt(py, y1, y2, y, i / steps));
}

function flattenArc(part: ArcPart, tolerance: number, most: number, points: number[]): void {
  const radius = Math.max(greatestRadius(part), 1e-300);
  // A chord over an angle h lies r (1 − cos h/2) inside a circle, and no further inside an ellipse of that radius.
  const step = 4 * Math.asin(Math.min(1, Math.sqrt(tolerance / (2 * radius))));
  const steps = Math.min(most, Math.max(2, Math.ceil(Math.abs(part.sweep) / step)));
  for (let i = 1; i < steps; i++) {
    const t = part.from + (part.sweep * i) / steps;
    points.push(
      part.centreX + part.ux * Math.cos(t) + part.vx * Math.sin(t),
      part.centreY + part.uy * Math.cos(t) + part.vy * Math.sin(t),
    );
  }
}

/** Half the longest diameter of an ellipse given by conjugate radii: the larger singular value. */
function greatestRadius({ ux, uy, vx, vy }: ArcPart): number {
  const half = (ux * ux + uy * uy + vx * vx + vy * vy) / 2;
  const det = ux * vy - uy * vx;
  return Math.sqrt(half + Math.sqrt(Math.max(0, half * half - det * det)));
}

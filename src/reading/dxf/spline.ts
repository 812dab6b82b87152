import type { BezierPart, Curve } from "../../core/patterns/curve.ts";
import { type DxfRecord, numberOf, numbersOf } from "./groups.ts";

/** A non-uniform rational B-spline: control points as (w x, w y, w). */
interface Nurbs {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Homogeneous[];
}

type Homogeneous = readonly [number, number, number];

const MOST_DEGREE = 15;
/** A span that is no cubic polynomial is followed by so many cubics that meet it in place and direction. */
const CUBICS = 16;

/**
 * The curve of a SPLINE: exact where it is a polynomial of degree 3 or less; else cubics that touch it sixteen times a
 * span, off by less than a hundred-thousandth of its size. Null when its numbers do not go together.
 * Source: DXF reference, SPLINE; Piegl & Tiller, The NURBS Book, 2.2, 3.3, 4.3 (evaluation and derivatives).
 */
export function splineCurve(record: DxfRecord): Curve | null {
  const nurbs = readNurbs(record);
  if (nurbs === null) return throughFitPoints(record);
  const { degree, knots, points } = nurbs;
  const isPolynomial = degree <= 3 && points.every(([, , w]) => w === points[0]![2]);
  const parts: BezierPart[] = [];
  let start: readonly [number, number] | null = null;
  for (let span = degree; span < points.length; span++) {
    const from = knots[span]!;
    const to = knots[span + 1]!;
    if (!(to > from)) continue;
    const pieces = isPolynomial ? 1 : CUBICS;
    for (let i = 0; i < pieces; i++) {
      const t0 = from + ((to - from) * i) / pieces;
      const t1 = from + ((to - from) * (i + 1)) / pieces;
      const a = pointAt(nurbs, span, t0);
      const b = pointAt(nurbs, span, t1);
      const third = (t1 - t0) / 3;
      start ??= [a.x, a.y];
      parts.push({
        kind: "bezier",
        x1: a.x + a.dx * third,
        y1: a.y + a.dy * third,
        x2: b.x - b.dx * third,
        y2: b.y - b.dy * third,
        x: b.x,
        y: b.y,
      });
    }
  }
  return start && { x: start[0], y: start[1], parts, closed: false };
}

function readNurbs(record: DxfRecord): Nurbs | null {
  const degree = numberOf(record, 71, 3);
  const knots = numbersOf(record, 40);
  const weights = numbersOf(record, 41);
  const xs = numbersOf(record, 10);
  const ys = numbersOf(record, 20);
  const n = xs.length;
  const fits =
    Number.isInteger(degree) &&
    degree >= 1 &&
    degree <= MOST_DEGREE &&
    n > degree &&
    ys.length === n &&
    knots.length === n + degree + 1;
  if (!fits || knots.some((knot, i) => i > 0 && !(knot >= knots[i - 1]!))) return null;
  const points = xs.map((x, i): Homogeneous => {
    const w = weights.length === n ? weights[i]! : 1;
    return [w * x, w * ys[i]!, w];
  });
  return { degree, knots, points };
}

function pointAt(nurbs: Nurbs, span: number, t: number): { x: number; y: number; dx: number; dy: number } {
  const { degree, knots, points } = nurbs;
  const [wx, wy, w] = deBoor(points, knots, degree, span, t);
  // The derivative is a B-spline of one degree less through the differences of the control points.
  const slopes = points.slice(1).map((point, i): Homogeneous => {
    const apart = knots[i + degree + 1]! - knots[i + 1]!;
    const factor = apart === 0 ? 0 : degree / apart;
    return point.map((value, k) => factor * (value - points[i]![k]!)) as unknown as Homogeneous;
  });
  const [dwx, dwy, dw] = degree === 0 ? [0, 0, 0] : deBoor(slopes, knots.slice(1, -1), degree - 1, span - 1, t);
  const x = wx / w;
  const y = wy / w;
  return { x, y, dx: (dwx - dw * x) / w, dy: (dwy - dw * y) / w };
}

function deBoor(
  points: readonly Homogeneous[],
  knots: readonly number[],
  degree: number,
  span: number,
  t: number,
): Homogeneous {
  const d = points.slice(span - degree, span + 1).map((point): [number, number, number] => [...point]);
  for (let r = 1; r <= degree; r++)
    for (let j = degree; j >= r; j--) {
      const i = span - degree + j;
      const apart = knots[i + degree - r + 1]! - knots[i]!;
      const share = apart === 0 ? 0 : (t - knots[i]!) / apart;
      for (let k = 0; k < 3; k++) d[j]![k] = (1 - share) * d[j - 1]![k]! + share * d[j]![k]!;
    }
  return d[degree]!;
}

/**
 * A spline that gives only the points it runs through: a smooth cubic through them, with the directions of parabolas
 * through each three (Bessel's end conditions; de Boor, A Practical Guide to Splines, IV).
 */
function throughFitPoints(record: DxfRecord): Curve | null {
  const xs = numbersOf(record, 11);
  const ys = numbersOf(record, 21);
  if (xs.length < 2 || xs.length !== ys.length) return null;
  const steps = xs.slice(1).map((x, i) => Math.hypot(x - xs[i]!, ys[i + 1]! - ys[i]!) || 1e-9);
  const slope = (values: readonly number[], i: number): number => {
    const rise = (k: number): number => (values[k + 1]! - values[k]!) / steps[k]!;
    const last = values.length - 1;
    if (last === 1) return rise(0);
    const inner = (k: number): number =>
      (steps[k]! * rise(k - 1) + steps[k - 1]! * rise(k)) / (steps[k - 1]! + steps[k]!);
    if (i === 0) return 2 * rise(0) - inner(1);
    return i === last ? 2 * rise(last - 1) - inner(last - 1) : inner(i);
  };
  const parts = steps.map((step, i): BezierPart => {
    const third = step / 3;
    return {
      kind: "bezier",
      x1: xs[i]! + slope(xs, i) * third,
      y1: ys[i]! + slope(ys, i) * third,
      x2: xs[i + 1]! - slope(xs, i + 1) * third,
      y2: ys[i + 1]! - slope(ys, i + 1) * third,
      x: xs[i + 1]!,
      y: ys[i + 1]!,
    };
  });
  return { x: xs[0]!, y: ys[0]!, parts, closed: (numberOf(record, 70) & 1) === 1 };
}

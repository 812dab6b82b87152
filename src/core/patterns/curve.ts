import { type Affine, mapDirection, mapPoint } from "../geometry/affine.ts";

/** Straight to (x, y). */
export interface StraightPart {
  readonly kind: "straight";
  readonly x: number;
  readonly y: number;
}

/** A cubic Bézier by its two handles to (x, y). */
export interface BezierPart {
  readonly kind: "bezier";
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly x: number;
  readonly y: number;
}

/**
 * An arc of an ellipse to (x, y): centre + u cos t + v sin t, t from `from` over `sweep` radians. u and v are two
 * conjugate radii; for a circle they are of one length and at a right angle.
 */
export interface ArcPart {
  readonly kind: "arc";
  readonly centreX: number;
  readonly centreY: number;
  readonly ux: number;
  readonly uy: number;
  readonly vx: number;
  readonly vy: number;
  readonly from: number;
  readonly sweep: number;
  readonly x: number;
  readonly y: number;
}

export type CurvePart = StraightPart | BezierPart | ArcPart;

/**
 * A line as a drawing holds it, before arcs are fitted: a start and the parts that follow one another. A closed one
 * runs straight from its last point to its start when the two are apart. Units are the reader's until it says mm.
 */
export interface Curve {
  readonly x: number;
  readonly y: number;
  readonly parts: readonly CurvePart[];
  readonly closed: boolean;
}

/** The curve under a linear map: straight stays straight, Bézier stays Bézier, an ellipse stays an ellipse. */
export function mapCurve(curve: Curve, map: Affine): Curve {
  const [x, y] = mapPoint(map, curve.x, curve.y);
  return { x, y, parts: curve.parts.map((part) => mapPart(part, map)), closed: curve.closed };
}

function mapPart(part: CurvePart, map: Affine): CurvePart {
  const [x, y] = mapPoint(map, part.x, part.y);
  if (part.kind === "straight") return { kind: "straight", x, y };
  if (part.kind === "bezier") {
    const [x1, y1] = mapPoint(map, part.x1, part.y1);
    const [x2, y2] = mapPoint(map, part.x2, part.y2);
    return { kind: "bezier", x1, y1, x2, y2, x, y };
  }
  const [centreX, centreY] = mapPoint(map, part.centreX, part.centreY);
  const [ux, uy] = mapDirection(map, part.ux, part.uy);
  const [vx, vy] = mapDirection(map, part.vx, part.vy);
  return { ...part, centreX, centreY, ux, uy, vx, vy, x, y };
}

/** Where each part starts: the start of the curve, then the end of the part before. */
export function partStarts(curve: Curve): readonly (readonly [number, number])[] {
  const starts: (readonly [number, number])[] = [];
  let at: readonly [number, number] = [curve.x, curve.y];
  for (const part of curve.parts) {
    starts.push(at);
    at = [part.x, part.y];
  }
  return starts;
}

/** The last point of a curve. */
export function curveEnd(curve: Curve): readonly [number, number] {
  const last = curve.parts.at(-1);
  return last ? [last.x, last.y] : [curve.x, curve.y];
}

/** The same curve walked the other way. */
export function reversedCurve(curve: Curve): Curve {
  const starts = partStarts(curve);
  const [x, y] = curveEnd(curve);
  const parts = curve.parts.map((part, i): CurvePart => {
    const [endX, endY] = starts[i]!;
    if (part.kind === "straight") return { kind: "straight", x: endX, y: endY };
    if (part.kind === "bezier")
      return { kind: "bezier", x1: part.x2, y1: part.y2, x2: part.x1, y2: part.y1, x: endX, y: endY };
    return { ...part, from: part.from + part.sweep, sweep: -part.sweep, x: endX, y: endY };
  });
  return { x, y, parts: parts.reverse(), closed: curve.closed };
}

/** Whether every number of the curve is one that can be reckoned with, none larger than `most`. */
export function isFiniteCurve(curve: Curve, most: number): boolean {
  const fits = (value: number): boolean => Math.abs(value) <= most;
  return (
    fits(curve.x) &&
    fits(curve.y) &&
    curve.parts.every((part) => Object.values(part).every((value) => typeof value !== "number" || fits(value)))
  );
}

/** An ellipse's arc from its centre and conjugate radii. */
export function arcPart(
  centre: readonly [number, number],
  u: readonly [number, number],
  v: readonly [number, number],
  from: number,
  sweep: number,
  end?: readonly [number, number],
): ArcPart {
  const t = from + sweep;
  const [x, y] = end ?? [
    centre[0] + u[0] * Math.cos(t) + v[0] * Math.sin(t),
    centre[1] + u[1] * Math.cos(t) + v[1] * Math.sin(t),
  ];
  return {
    kind: "arc",
    ...{ centreX: centre[0], centreY: centre[1], ux: u[0], uy: u[1], vx: v[0], vy: v[1] },
    ...{ from, sweep, x, y },
  };
}

/** A quadratic Bézier from (x0, y0) as the cubic it is. */
export function quadraticPart(x0: number, y0: number, x1: number, y1: number, x: number, y: number): BezierPart {
  return {
    kind: "bezier",
    x1: x0 + (2 / 3) * (x1 - x0),
    y1: y0 + (2 / 3) * (y1 - y0),
    x2: x + (2 / 3) * (x1 - x),
    y2: y + (2 / 3) * (y1 - y),
    x,
    y,
  };
}

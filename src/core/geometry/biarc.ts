/** A point of a curve and its unit direction there. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** Deepest halving of a curve: far below any tolerance. */
const MOST_HALVINGS = 24;

/**
 * Corners `[x, y, bulge]` of arcs that follow a curve from `from` to `to`, the end left out. Arcs meet each other and
 * the curve's ends in one direction.
 *
 * `at` gives the curve's points; `off` how far a point lies from the curve, mm. Each pair of arcs is within `tolerance`
 * of it at its joint and the middles of its arcs, else the stretch is halved.
 * Source: biarcs with equal tangent lengths (Bolton 1975, Computer-Aided Design 7(2)).
 */
export function arcsAlong(
  at: (t: number) => CurvePoint,
  off: (x: number, y: number) => number,
  from: number,
  to: number,
  tolerance: number,
): [number, number, number][] {
  const out: [number, number, number][] = [];
  const visit = (t0: number, t1: number, halvings: number): void => {
    const pair = biarc(at(t0), at(t1));
    const near =
      pair.every(([x, y]) => off(x, y) <= tolerance) && middles(pair, at(t1)).every((d) => off(...d) <= tolerance);
    if (!near && halvings < MOST_HALVINGS) {
      visit(t0, (t0 + t1) / 2, halvings + 1);
      visit((t0 + t1) / 2, t1, halvings + 1);
    } else out.push(...pair);
  };
  visit(from, to, 0);
  return out;
}

/** Two arcs from one point to another, in the directions given; the end is left out. */
function biarc(a: CurvePoint, b: CurvePoint): [number, number, number][] {
  const vx = b.x - a.x;
  const vy = b.y - a.y;
  const along = vx * (a.dx + b.dx) + vy * (a.dy + b.dy);
  const spread = 2 * (1 - (a.dx * b.dx + a.dy * b.dy));
  const square = vx * vx + vy * vy;
  // The root without cancellation: the ends' directions are nearly alike on a flat stretch.
  const d = square / (along + Math.sqrt(along * along + spread * square));
  const x = (a.x + b.x + d * (a.dx - b.dx)) / 2;
  const y = (a.y + b.y + d * (a.dy - b.dy)) / 2;
  return [
    [a.x, a.y, bulgeFrom(a.dx, a.dy, x - a.x, y - a.y)],
    [x, y, -bulgeFrom(-b.dx, -b.dy, x - b.x, y - b.y)],
  ];
}

/** Bulge of the arc that leaves in direction d and ends a chord c away: a quarter of twice the angle between them. */
function bulgeFrom(dx: number, dy: number, cx: number, cy: number): number {
  return Math.tan(Math.atan2(dx * cy - dy * cx, dx * cx + dy * cy) / 2);
}

/** Points in the middle of both arcs. */
function middles(pair: readonly [number, number, number][], end: CurvePoint): [number, number][] {
  return pair.map(([x, y, bulge], i) => {
    const [nx, ny] = pair[i + 1] ?? [end.x, end.y];
    // The middle of an arc lies its rise, bulge · chord / 2, to the right of its chord.
    return [(x + nx) / 2 + (bulge * (ny - y)) / 2, (y + ny) / 2 - (bulge * (nx - x)) / 2];
  });
}

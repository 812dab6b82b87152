import type { Curve, CurvePart } from "./curve.ts";
import { arcPart } from "./curve.ts";

type Point = readonly [number, number];

/** A corner turns by more than this within `REACH` mm on either side, radians. */
const CORNER = (28 * Math.PI) / 180;
const REACH = 2;
/** A corner of two straight edges is put where they meet when that is so near, mm. */
const SHARPEN = 1.5;

/**
 * A closed line of many close points, as a trace gives it, as few straight edges and arcs that stay within `tolerance`
 * mm of the points. Corners are kept sharp: two straight edges are lengthened until they meet.
 *
 * Shapes: points `[x0, y0, …]`, the first not repeated.
 * Cost: O(n log n) for smooth traces; each edge is grown by doubling and halving.
 */
export function fitPolyline(points: ArrayLike<number>, tolerance: number): Curve {
  const n = points.length / 2;
  const all = Array.from({ length: n }, (_, i): Point => [points[2 * i]!, points[2 * i + 1]!]);
  const corners = cornersOf(all);
  const starts = corners.length > 0 ? corners : [0];
  const edges: Edge[] = [];
  for (const [k, from] of starts.entries()) {
    const to = starts[(k + 1) % starts.length]!;
    const count = ((to - from + n - 1) % n) + 1;
    const run = Array.from({ length: count + 1 }, (_, i) => all[(from + i) % n]!);
    edges.push(...fitRun(run, tolerance));
  }
  return curveOf(sharpened(edges));
}

/** A fitted edge with the points it stands for; bulge 0 for a straight one. */
interface Edge {
  start: Point;
  end: Point;
  readonly bulge: number;
  readonly run: readonly Point[];
}

/** Indices where the line turns sharply, one for each corner. */
function cornersOf(all: readonly Point[]): number[] {
  const n = all.length;
  const turns = all.map((_, i) => {
    const before = away(all, i, -1);
    const after = away(all, i, 1);
    const [x, y] = all[i]!;
    const inX = x - before[0];
    const inY = y - before[1];
    const outX = after[0] - x;
    const outY = after[1] - y;
    return Math.abs(Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY));
  });
  const sharp = turns.flatMap((turn, i) => (turn > CORNER ? [i] : []));
  // Of neighbours that all turn, the sharpest is the corner.
  return sharp.filter((i) =>
    sharp.every((j) => {
      const apart = Math.hypot(all[i]![0] - all[j]![0], all[i]![1] - all[j]![1]);
      const isNear = apart < REACH && Math.min((i - j + n) % n, (j - i + n) % n) < n / 4;
      return !isNear || turns[i]! > turns[j]! || (turns[i] === turns[j] && i <= j);
    }),
  );
}

/** The point about `REACH` mm away from point i, one way or the other. */
function away(all: readonly Point[], i: number, step: 1 | -1): Point {
  const n = all.length;
  let at = i;
  let gone = 0;
  for (let k = 0; k < n / 3 && gone < REACH; k++) {
    const next = (at + step + n) % n;
    gone += Math.hypot(all[next]![0] - all[at]![0], all[next]![1] - all[at]![1]);
    at = next;
  }
  return all[at]!;
}

/** A straight edge that reaches so far of what an arc would is taken: an arc that hardly bows only reaches round a bend. */
const NEARLY_AS_FAR = 0.7;

/** The longest edges that fit, one after another. */
function fitRun(run: readonly Point[], tolerance: number): Edge[] {
  const edges: Edge[] = [];
  for (let from = 0; from < run.length - 1; ) {
    const any = longestEdge(run, from, tolerance, edgeThrough);
    const straight = any.bulge === 0 ? any : longestEdge(run, from, tolerance, straightThrough);
    const edge = straight.run.length >= NEARLY_AS_FAR * any.run.length ? straight : any;
    edges.push(edge);
    from += edge.run.length - 1;
  }
  return edges;
}

/** The edge from one point of a run that reaches furthest: doubling until none fits, then halving between the two. */
function longestEdge(run: readonly Point[], from: number, tolerance: number, through: EdgeThrough): Edge {
  let good = from + 1;
  let best = through(run, from, good, tolerance)!;
  let step = 2;
  let bad = run.length;
  while (good < run.length - 1 && bad - good > 1) {
    const to = bad === run.length ? Math.min(run.length - 1, from + step) : (good + bad) >> 1;
    if (to <= good) break;
    const edge = through(run, from, to, tolerance);
    if (edge) {
      good = to;
      best = edge;
      step *= 2;
    } else bad = to;
  }
  return best;
}

type EdgeThrough = (run: readonly Point[], from: number, to: number, tolerance: number) => Edge | null;

/** A straight edge from one point of a run to another that keeps near all between; null when it does not. */
const straightThrough: EdgeThrough = (run, from, to, tolerance) => {
  const [start, end, between] = [run[from]!, run[to]!, run.slice(from, to + 1)];
  const fits = between.every((point) => straightDistance(point, start, end) <= tolerance);
  return fits ? { start, end, bulge: 0, run: between } : null;
};

/** A straight edge or an arc from one point of a run to another that keeps near all between; null when none does. */
function edgeThrough(run: readonly Point[], from: number, to: number, tolerance: number): Edge | null {
  const straight = straightThrough(run, from, to, tolerance);
  if (straight !== null) return straight;
  const start = run[from]!;
  const end = run[to]!;
  const between = run.slice(from, to + 1);
  const bulge = bulgeThrough(start, run[(from + to) >> 1]!, end);
  if (bulge === null || Math.abs(bulge) > 1) return null;
  const fits = between.every((point) => arcDistance(point, start, end, bulge) <= tolerance);
  return fits ? { start, end, bulge, run: between } : null;
}

function straightDistance([x, y]: Point, a: Point, b: Point): number {
  const vx = b[0] - a[0];
  const vy = b[1] - a[1];
  const length = vx * vx + vy * vy;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * vx + (y - a[1]) * vy) / length));
  return Math.hypot(x - a[0] - t * vx, y - a[1] - t * vy);
}

/** Bulge of the arc from a through m to b: the angle at m stands over half of the rest of the circle. */
export function bulgeThrough(a: Point, m: Point, b: Point): number | null {
  const ux = m[0] - a[0];
  const uy = m[1] - a[1];
  const vx = b[0] - m[0];
  const vy = b[1] - m[1];
  const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  return Math.abs(turn) < 1e-9 ? null : Math.tan(turn / 2);
}

/** How far a point is from the circle of an arc. mm. */
export function arcDistance([x, y]: Point, a: Point, b: Point, bulge: number): number {
  const [cx, cy, radius] = circleOf(a, b, bulge);
  return Math.abs(Math.hypot(x - cx, y - cy) - radius);
}

/** The centre lies (1 − b²) / (4 b) chords to the left of the chord's middle. */
function circleOf(a: Point, b: Point, bulge: number): readonly [number, number, number] {
  const off = (1 - bulge * bulge) / (4 * bulge);
  const cx = (a[0] + b[0]) / 2 - off * (b[1] - a[1]);
  const cy = (a[1] + b[1]) / 2 + off * (b[0] - a[0]);
  return [cx, cy, Math.hypot(a[0] - cx, a[1] - cy)];
}

/** Straight neighbours meet where their own points say, not where the trace cut the corner. */
function sharpened(edges: readonly Edge[]): Edge[] {
  const moved = edges.map((edge) => ({ ...edge }));
  for (const [i, edge] of moved.entries()) {
    const next = moved[(i + 1) % moved.length]!;
    if (moved.length < 3 || edge.bulge !== 0 || next.bulge !== 0) continue;
    const at = crossingOf(lineThrough(edge.run), lineThrough(next.run));
    if (at === null || Math.hypot(at[0] - edge.end[0], at[1] - edge.end[1]) > SHARPEN) continue;
    edge.end = at;
    next.start = at;
  }
  return moved;
}

/** Middle and direction of the line that fits the inner points of a run best (principal axis). */
function lineThrough(run: readonly Point[]): readonly [Point, Point] {
  const skip = Math.floor(run.length / 8);
  const inner = run.length > 12 ? run.slice(skip, run.length - skip) : run;
  const mx = inner.reduce((sum, [x]) => sum + x, 0) / inner.length;
  const my = inner.reduce((sum, [, y]) => sum + y, 0) / inner.length;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const [x, y] of inner) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const turn = Math.atan2(2 * xy, xx - yy) / 2;
  return [
    [mx, my],
    [Math.cos(turn), Math.sin(turn)],
  ];
}

function crossingOf([p, u]: readonly [Point, Point], [q, v]: readonly [Point, Point]): Point | null {
  const det = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(det) < 0.1) return null;
  const t = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / det;
  return [p[0] + t * u[0], p[1] + t * u[1]];
}

function curveOf(edges: readonly Edge[]): Curve {
  const parts = edges.map(({ start, end, bulge }): CurvePart => {
    if (bulge === 0) return { kind: "straight", x: end[0], y: end[1] };
    const [cx, cy, radius] = circleOf(start, end, bulge);
    const from = Math.atan2(start[1] - cy, start[0] - cx);
    return arcPart([cx, cy], [radius, 0], [0, radius], from, 4 * Math.atan(bulge), end);
  });
  const [x, y] = edges[0]!.start;
  return { x, y, parts, closed: true };
}

type Point = readonly [number, number];

/**
 * The four corners of a sheet of paper in a picture, clockwise from the one nearest the upper left, in pixels: where
 * the straight runs of its traced edge meet. Null when the edge has no four long straight runs.
 */
export function sheetCorners(edge: Float64Array): readonly Point[] | null {
  const points = Array.from({ length: edge.length / 2 }, (_, i): Point => [edge[2 * i]!, edge[2 * i + 1]!]);
  const rough = extremes(points);
  if (new Set(rough).size < 4) return null;
  const lines = rough.map((from, i) => lineOf(between(points, from, rough[(i + 1) % 4]!)));
  if (lines.some((line) => line === null)) return null;
  const corners = lines.map((line, i) => crossing(lines[(i + 3) % 4]!, line!));
  return corners.some((corner) => corner === null) ? null : (corners as Point[]);
}

/** Indices of the points furthest to the upper left, upper right, lower right and lower left. */
function extremes(points: readonly Point[]): number[] {
  const far = (value: (point: Point) => number): number =>
    points.reduce((best, point, i) => (value(point) < value(points[best]!) ? i : best), 0);
  return [far(([x, y]) => x + y), far(([x, y]) => y - x), far(([x, y]) => -x - y), far(([x, y]) => x - y)];
}

/** The points between two corners on the shorter way round, without those near the corners. */
function between(points: readonly Point[], from: number, to: number): Point[] {
  const n = points.length;
  const ahead = (to - from + n) % n;
  const isAhead = ahead <= n / 2;
  const count = isAhead ? ahead : n - ahead;
  const margin = Math.floor(count * 0.08);
  const out: Point[] = [];
  for (let k = margin; k <= count - margin; k++) out.push(points[(from + (isAhead ? k : -k) + n) % n]!);
  return out;
}

interface Line {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** The best line through points (principal axis), refitted without those that stand out; null for too few. */
function lineOf(points: readonly Point[]): Line | null {
  if (points.length < 8) return null;
  const first = axisOf(points);
  const off = points.map((point) => offLine(first, point));
  const usual = [...off].sort((a, b) => a - b)[Math.floor(off.length * 0.8)]!;
  return axisOf(points.filter((_, i) => off[i]! <= usual + 1e-9));
}

function axisOf(points: readonly Point[]): Line {
  const x = points.reduce((sum, point) => sum + point[0], 0) / points.length;
  const y = points.reduce((sum, point) => sum + point[1], 0) / points.length;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const point of points) {
    xx += (point[0] - x) ** 2;
    xy += (point[0] - x) * (point[1] - y);
    yy += (point[1] - y) ** 2;
  }
  const turn = Math.atan2(2 * xy, xx - yy) / 2;
  return { x, y, dx: Math.cos(turn), dy: Math.sin(turn) };
}

const offLine = (line: Line, [x, y]: Point): number => Math.abs((x - line.x) * line.dy - (y - line.y) * line.dx);

function crossing(a: Line, b: Line): Point | null {
  const det = a.dx * b.dy - a.dy * b.dx;
  if (Math.abs(det) < 0.05) return null;
  const t = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / det;
  return [a.x + t * a.dx, a.y + t * a.dy];
}

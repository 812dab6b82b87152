// What can be told of two outlines without cutting them: most pairs of a plan lie apart, and polyclip-ts takes a
// thousand times as long to say so. Where these say no, nothing is known yet.

export type Point = [number, number];

/** Outlines that reach so little into each other, mm, have less in common than a judge of plans lets pass. */
const DEPTH = 4e-4;

/** How far points reach along a direction, from the least to the most. */
function reach(points: readonly Point[], nx: number, ny: number): Point {
  let [least, most] = [Infinity, -Infinity];
  for (const [x, y] of points) {
    const at = nx * x + ny * y;
    if (at < least) least = at;
    if (at > most) most = at;
  }
  return [least, most];
}

/** Whether a straight line square to the direction, of length 1, has one outline on each of its sides. */
function parts(a: readonly Point[], b: readonly Point[], nx: number, ny: number): boolean {
  const [leastA, mostA] = reach(a, nx, ny);
  const [leastB, mostB] = reach(b, nx, ny);
  return leastB >= mostA - DEPTH || leastA >= mostB - DEPTH;
}

/** Whether a straight line has one outline on each of its sides: along the cloth, across it, or along an edge of either. */
export function arePartedByLine(a: readonly Point[], b: readonly Point[]): boolean {
  if (parts(a, b, 1, 0) || parts(a, b, 0, 1)) return true;
  return [a, b].some((ring) =>
    ring.some(([x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % ring.length]!;
      const length = Math.hypot(nextX - x, nextY - y);
      return length > 1e-6 && parts(a, b, (nextY - y) / length, (x - nextX) / length);
    }),
  );
}

/** Whether all points lie on the inner side of every edge of an outline that turns one way only. */
export function liesInConvex(points: readonly Point[], ring: readonly Point[]): boolean {
  const senses = new Set<number>();
  ring.forEach(([x, y], i) => {
    const [[bx, by], [cx, cy]] = [ring[(i + 1) % ring.length]!, ring[(i + 2) % ring.length]!];
    const turn = (bx - x) * (cy - by) - (by - y) * (cx - bx);
    if (Math.abs(turn) > 1e-9) senses.add(Math.sign(turn));
  });
  if (senses.size !== 1) return false;
  const [sense] = senses as unknown as [number];
  return ring.every(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    const length = Math.hypot(nextX - x, nextY - y);
    return points.every(([px, py]) => sense * ((nextX - x) * (py - y) - (nextY - y) * (px - x)) >= -DEPTH * length);
  });
}

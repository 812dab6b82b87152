import type { Contour } from "./contour.ts";

/**
 * The contour without corners that lie within `tolerance` mm of the straight line between those that stay; arcs and
 * their ends stay as they are. Every point left out is that near to the new contour, not only in sum.
 * Cost: about O(points · log points).
 * Source: Douglas and Peucker 1973, algorithms for the reduction of the number of points of a line.
 */
export function fewerCorners(contour: Contour, tolerance: number): Contour {
  const { vertices, closed } = contour;
  const count = vertices.length / 3;
  if (count < 3) return contour;
  const stays = new Uint8Array(count);
  stays[0] = 1;
  if (closed) stays[farthest(vertices, 0, 0, count)!.at] = 1;
  else stays[count - 1] = 1;
  for (let i = 0; i < count; i++) if (vertices[3 * i + 2] !== 0) stays[i] = stays[(i + 1) % count] = 1;
  const ends = Array.from(stays.keys()).filter((i) => stays[i] === 1);
  const open = ends.map((from, k): [number, number] => [from, ends[k + 1] ?? count]);
  for (let stretch = open.pop(); stretch; stretch = open.pop()) {
    const [from, to] = stretch;
    if (to === count && !closed) continue;
    const off = farthest(vertices, from, to % count, to - from);
    if (!off || off.away <= tolerance) continue;
    stays[off.at] = 1;
    open.push([from, off.at], [off.at, to]);
  }
  return { vertices: vertices.filter((_, i) => stays[Math.floor(i / 3)] === 1), closed };
}

/** The corner among the `steps` after `from` that is farthest from the straight line to `to`; null when none is. */
function farthest(
  vertices: Float64Array,
  from: number,
  to: number,
  steps: number,
): { readonly at: number; readonly away: number } | null {
  const [x0, y0] = [vertices[3 * from]!, vertices[3 * from + 1]!];
  const [dx, dy] = [vertices[3 * to]! - x0, vertices[3 * to + 1]! - y0];
  const long = dx * dx + dy * dy;
  let best: { at: number; away: number } | null = null;
  for (let at = from + 1; at < from + steps; at++) {
    const x = vertices[3 * at]! - x0;
    const y = vertices[3 * at + 1]! - y0;
    const share = long === 0 ? 0 : Math.min(1, Math.max(0, (x * dx + y * dy) / long));
    const away = Math.hypot(x - share * dx, y - share * dy);
    if (!best || away > best.away) best = { at, away };
  }
  return best;
}

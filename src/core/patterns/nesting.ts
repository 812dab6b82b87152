import { type Box, boxHolds } from "../geometry/box.ts";
import { isInsideRing } from "../geometry/inside.ts";
import type { Ring } from "../geometry/ring.ts";

/** A line as nesting looks at it: its points, whether it closes, its box and area. */
export interface NestedLine {
  readonly points: Ring;
  readonly closed: boolean;
  readonly box: Box;
  readonly areaMm2: number;
}

/** Lines may touch what holds them by this much, mm. */
const TOUCH = 0.5;

/**
 * For each line, the index of the smallest closed line that holds it; null when none does.
 * Cost: O(n · closed) boxes, and points only where a box is held.
 */
export function nestLines(lines: readonly NestedLine[]): readonly (number | null)[] {
  const homes = lines
    .map((line, index) => ({ line, index }))
    .filter(({ line }) => line.closed)
    .sort((a, b) => a.line.areaMm2 - b.line.areaMm2 || a.index - b.index);
  return lines.map((line, index) => {
    for (const home of homes) {
      if (home.index === index || !boxHolds(home.line.box, line.box, TOUCH)) continue;
      // Of two that are alike the first holds the second, never each the other.
      if (
        line.closed &&
        (home.line.areaMm2 < line.areaMm2 || (home.line.areaMm2 === line.areaMm2 && home.index > index))
      )
        continue;
      if (holdsPoints(home.line.points, line.points, !line.closed)) return home.index;
    }
    return null;
  });
}

/** Whether a few points spread along a line lie inside a ring, most of them at least: its ends may stand on the edge. */
function holdsPoints(ring: Ring, points: Ring, withEdge: boolean): boolean {
  const n = points.length / 2;
  const samples = Math.min(9, Math.max(3, n));
  let inside = 0;
  for (let k = 0; k < samples; k++) {
    // Middles of edges: corners are where lines like to touch.
    const at = Math.min(n - 2, Math.floor((k * (n - 1)) / samples));
    const share = n > samples ? 0.5 : (k + 1) / (samples + 1);
    const i = 2 * Math.max(0, at);
    const x = points[i]! + share * ((points[i + 2] ?? points[i]!) - points[i]!);
    const y = points[i + 1]! + share * ((points[i + 3] ?? points[i + 1]!) - points[i + 1]!);
    // A fold lies on the edge itself.
    if (isInsideRing(ring, x, y) || (withEdge && distanceToRing(ring, x, y) <= TOUCH)) inside++;
  }
  return inside * 2 > samples;
}

/** Distance of a point from the edge of a ring, mm. O(n). */
export function distanceToRing(ring: Ring, x: number, y: number): number {
  let least = Infinity;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const ax = ring[j]!;
    const ay = ring[j + 1]!;
    const vx = ring[i]! - ax;
    const vy = ring[i + 1]! - ay;
    const length = vx * vx + vy * vy;
    const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * vx + (y - ay) * vy) / length));
    least = Math.min(least, Math.hypot(x - ax - t * vx, y - ay - t * vy));
  }
  return least;
}

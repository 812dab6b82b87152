import type { Ring } from "../geometry/ring.ts";

/** Where a ring crosses itself, and how often. */
export interface RingCrossings {
  readonly count: number;
  /** Whether there may be more: counting has ended, because the line is a scribble. */
  readonly more: boolean;
  readonly x: number;
  readonly y: number;
}

/** Edges that are compared at most, and crossings counted: beyond either a line is a scribble. */
const MOST_PAIRS = 20_000_000;
const MOST_CROSSINGS = 1000;

/**
 * Proper crossings of a ring with itself; null when there is none. Touching is not crossing.
 * Cost: edges sorted along x and compared while their extents overlap, O(n log n + pairs).
 */
export function ringCrossings(ring: Ring): RingCrossings | null {
  const n = ring.length / 2;
  if (n < 4) return null;
  const low = new Float64Array(n);
  const high = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const x0 = ring[2 * i]!;
    const x1 = ring[(2 * i + 2) % ring.length]!;
    low[i] = Math.min(x0, x1);
    high[i] = Math.max(x0, x1);
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => low[a]! - low[b]!);
  let count = 0;
  let first: readonly [number, number] = [0, 0];
  let pairs = 0;
  for (let a = 0; a < n; a++) {
    const i = order[a]!;
    for (let b = a + 1; b < n && low[order[b]!]! <= high[i]!; b++) {
      if (++pairs > MOST_PAIRS) return count > 0 ? { count, more: true, x: first[0], y: first[1] } : null;
      const j = order[b]!;
      const apart = Math.abs(i - j);
      if (apart === 1 || apart === n - 1) continue;
      const at = crossingOf(ring, i, j);
      if (at === null) continue;
      if (count === 0) first = at;
      if (++count === MOST_CROSSINGS) return { count, more: true, x: first[0], y: first[1] };
    }
  }
  return count > 0 ? { count, more: false, x: first[0], y: first[1] } : null;
}

function crossingOf(ring: Ring, i: number, j: number): readonly [number, number] | null {
  const m = ring.length;
  const ax = ring[2 * i]!;
  const ay = ring[2 * i + 1]!;
  const bx = ring[(2 * i + 2) % m]!;
  const by = ring[(2 * i + 3) % m]!;
  const cx = ring[2 * j]!;
  const cy = ring[2 * j + 1]!;
  const dx = ring[(2 * j + 2) % m]!;
  const dy = ring[(2 * j + 3) % m]!;
  if (Math.max(cy, dy) < Math.min(ay, by) || Math.max(ay, by) < Math.min(cy, dy)) return null;
  const side = (px: number, py: number, qx: number, qy: number, rx: number, ry: number): number =>
    (qx - px) * (ry - py) - (qy - py) * (rx - px);
  const c = side(ax, ay, bx, by, cx, cy);
  const d = side(ax, ay, bx, by, dx, dy);
  const a = side(cx, cy, dx, dy, ax, ay);
  const b = side(cx, cy, dx, dy, bx, by);
  // Ends that lie on the other line within a hundredth of a millimetre touch it.
  const slack = 1e-2 * Math.max(Math.hypot(bx - ax, by - ay), Math.hypot(dx - cx, dy - cy));
  if (!(c * d < 0 && a * b < 0) || Math.min(Math.abs(c), Math.abs(d), Math.abs(a), Math.abs(b)) < slack)
    return null;
  const t = c / (c - d);
  return [cx + t * (dx - cx), cy + t * (dy - cy)];
}

import { ringBox } from "../../../geometry/box.ts";
import type { Ring } from "../../../geometry/ring.ts";

/** Discs of a shape at most, points a side of the lattice their middles are looked for on, and halvings after. */
const MOST_DISCS = 4;
const LATTICE = 11;
const HALVINGS = 5;
/** Smaller discs than this share of the first tell little. */
const LEAST_SHARE = 0.35;

/** Distance of (x, y) to the ring's outline; negative outside. One pass for side and distance, as it runs most. */
function depthIn(ring: Ring, x: number, y: number): number {
  let inside = false;
  let least = Infinity;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const ax = ring[j]!;
    const ay = ring[j + 1]!;
    const dx = ring[i]! - ax;
    const dy = ring[i + 1]! - ay;
    if (ay > y !== ay + dy > y && x < ax + ((y - ay) / dy) * dx) inside = !inside;
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    const rx = x - ax - t * dx;
    const ry = y - ay - t * dy;
    least = Math.min(least, rx * rx + ry * ry);
  }
  return inside ? Math.sqrt(least) : -Math.sqrt(least);
}

/**
 * Large discs inside a ring, as x, y, radius each: the largest there is, nearly, then the largest whose middle lies in
 * none before. Two pieces overlap at least as deep as two of their discs. Cost: some hundred distances to the ring.
 */
export function innerDiscs(ring: Ring): Float64Array {
  const box = ringBox(ring);
  const stepX = (box.maxX - box.minX) / LATTICE;
  const stepY = (box.maxY - box.minY) / LATTICE;
  const found: number[] = [];
  const depths = new Float64Array(LATTICE * LATTICE);
  const at = (k: number): [number, number] => [
    box.minX + ((k % LATTICE) + 0.5) * stepX,
    box.minY + (Math.floor(k / LATTICE) + 0.5) * stepY,
  ];
  for (let k = 0; k < depths.length; k++) depths[k] = depthIn(ring, ...at(k));
  while (found.length < 3 * MOST_DISCS) {
    let best = -1;
    for (let k = 0; k < depths.length; k++)
      if (depths[k]! > 0 && (best < 0 || depths[k]! > depths[best]!)) best = k;
    if (best < 0) break;
    let [x, y] = at(best);
    let radius = depths[best]!;
    for (let h = 0, [dx, dy] = [stepX / 2, stepY / 2]; h < HALVINGS; h++, dx /= 2, dy /= 2)
      for (const [mx, my] of [
        [x - dx, y],
        [x + dx, y],
        [x, y - dy],
        [x, y + dy],
      ] as const) {
        const depth = depthIn(ring, mx, my);
        if (depth > radius) [x, y, radius] = [mx, my, depth];
      }
    if (found.length > 0 && radius < LEAST_SHARE * found[2]!) break;
    found.push(x, y, radius);
    for (let k = 0; k < depths.length; k++) {
      const [px, py] = at(k);
      if (Math.hypot(px - x, py - y) < radius) depths[k] = 0;
    }
  }
  return Float64Array.from(found);
}

import { ringBox } from "../../../../geometry/box.ts";
import { isInside } from "../../../../geometry/inside.ts";
import type { Polygon, Ring } from "../../../../geometry/ring.ts";
import type { CutBox } from "../../cuts/cutTree.ts";

/** Strips that an outline is looked at in; finer ones find a little more cloth and cost more. */
const STRIPS = 48;

/**
 * Boxes that together cover everything of an outline's own box that is not inside it. What they leave free is truly
 * inside; a strip counts as outside wherever the outline runs through it.
 *
 * Cost: O(strips × points).
 */
export function outsideBoxes(outline: Polygon): CutBox[] {
  const { minX, minY, maxX, maxY } = ringBox(outline.outer);
  const rings = [outline.outer, ...outline.holes];
  const step = (maxX - minX) / STRIPS;
  return Array.from({ length: STRIPS }, (_, i) => minX + i * step).flatMap((x) => {
    const bands = mergedBands(rings.flatMap((ring) => edgeBands(ring, x, x + step)));
    const out: CutBox[] = [];
    let blockedFrom = minY;
    for (let i = 0; i + 1 < bands.length; i++) {
      const [low, high] = [bands[i]!.high, bands[i + 1]!.low];
      if (!isInside(rings, x + step / 2, (low + high) / 2)) continue;
      if (low > blockedFrom) out.push({ x, y: blockedFrom, dx: step, dy: low - blockedFrom });
      blockedFrom = high;
    }
    if (maxY > blockedFrom) out.push({ x, y: blockedFrom, dx: step, dy: maxY - blockedFrom });
    return out;
  });
}

interface Band {
  readonly low: number;
  readonly high: number;
}

/** Heights between which the ring's edges run within a strip. */
function edgeBands(ring: Ring, from: number, to: number): Band[] {
  const bands: Band[] = [];
  const n = ring.length / 2;
  for (let i = 0; i < n; i++) {
    const [ax, ay] = [ring[2 * i]!, ring[2 * i + 1]!];
    const [bx, by] = [ring[(2 * i + 2) % ring.length]!, ring[(2 * i + 3) % ring.length]!];
    if (Math.max(ax, bx) < from || Math.min(ax, bx) > to) continue;
    const at = (x: number): number => (ax === bx ? ay : ay + ((x - ax) * (by - ay)) / (bx - ax));
    const ends = ax === bx ? [ay, by] : [at(Math.max(from, Math.min(ax, bx))), at(Math.min(to, Math.max(ax, bx)))];
    bands.push({ low: Math.min(...ends), high: Math.max(...ends) });
  }
  return bands;
}

function mergedBands(bands: readonly Band[]): Band[] {
  const out: Band[] = [];
  for (const band of [...bands].sort((a, b) => a.low - b.low)) {
    const last = out.at(-1);
    if (last && band.low <= last.high)
      out[out.length - 1] = { low: last.low, high: Math.max(last.high, band.high) };
    else out.push(band);
  }
  return out;
}

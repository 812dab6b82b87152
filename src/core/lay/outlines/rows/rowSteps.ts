import { type Ring, signedArea } from "../../../geometry/ring.ts";
import { movingRing, restingRing, shakenRing } from "../compile/sumRings.ts";
import { EDGE, windingOf } from "../noFit/gridEdges.kernel.ts";
import { isWholeSum, type SumWork, sumOutline } from "../noFit/sumOutline.kernel.ts";

/** From one copy in a row to the next, mm. */
export interface RowStep {
  readonly x: number;
  readonly y: number;
  /** Share of a long row's band that the copies cover. */
  readonly fullness: number;
}

/** Grid units that the largest piece is across. */
const EXTENT = 6e6;
const STEPS_KEPT = 2;
/** Steps nearer to each other than this share of the piece's size are one. */
const APART = 0.05;
/** Copies of a row that are kept clear of its first. */
const COPIES_CLEAR = 8;

/**
 * The fullest steps at which copies of an outline, all turned alike, follow each other in a row without overlap.
 * `extent`: of the largest outline of the job, mm. Cost: one no-fit polygon, O(corners) for each of its corners.
 */
export function rowSteps(ring: Ring, extent: number, work: SumWork): RowStep[] {
  const scale = EXTENT / extent;
  const onGrid = ring.map((value) => Math.round(value * scale) + 0);
  sumOutline(work, restingRing(shakenRing(onGrid, 1)), movingRing(shakenRing(onGrid, 2), 1, 0, 1));
  if (!isWholeSum(work)) return [];
  const { edges, edgeCount } = work;
  const area = signedArea(ring);
  const found: RowStep[] = [];
  for (let e = 0; e < edgeCount * EDGE; e += EDGE)
    for (const part of [0, 0.5]) {
      const t = part * edges[e + 4]!;
      const gx = edges[e]! + t * edges[e + 2]!;
      const gy = edges[e + 1]! + t * edges[e + 3]!;
      // Either way along it is the same row.
      if (gx < 0 || (gx === 0 && gy < 0)) continue;
      let isFree = true;
      for (let k = 2; k < COPIES_CLEAR && isFree; k++)
        isFree = windingOf(edges, 0, edgeCount, k * gx, k * gy) === 0;
      if (!isFree) continue;
      const x = gx / scale;
      const y = gy / scale;
      let low = Infinity;
      let high = -Infinity;
      for (let i = 0; i < ring.length; i += 2) {
        const off = x * ring[i + 1]! - y * ring[i]!;
        low = Math.min(low, off);
        high = Math.max(high, off);
      }
      found.push({ x, y, fullness: area / (high - low) });
    }
  found.sort((a, b) => b.fullness - a.fullness);
  const apart = APART * Math.sqrt(area);
  const out: RowStep[] = [];
  for (const one of found) {
    if (out.length === STEPS_KEPT) break;
    if (!out.some((other) => Math.hypot(other.x - one.x, other.y - one.y) < apart)) out.push(one);
  }
  return out;
}

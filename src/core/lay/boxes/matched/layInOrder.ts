import type { Box } from "../../../geometry/box.ts";
import { type LaidBox, type MatchedJob, type MatchedWay, ROUNDING, rungsAlong, rungUp } from "./matchedJob.ts";

/** What laying boxes in an order gave. */
export interface Laying {
  readonly laid: readonly LaidBox[];
  /** Far side of the furthest box with its gap, mm. */
  readonly end: number;
  /** Area of the boxes that found no place, mm². */
  readonly areaLeft: number;
  /** Ends weighed with areas: tells layings of one length apart. */
  readonly moment: number;
  readonly looks: number;
}

/**
 * Lays one box after another in the leftmost place on its rungs that is free, then the lowest; in the way that ends
 * first unless `ways` names one. `order` holds kinds, one entry a copy. Cost: O(boxes² · log boxes) for each box.
 */
export function layInOrder(job: MatchedJob, order: readonly number[], ways: readonly number[]): Laying {
  const down: Box[] = [...job.blocked].sort((a, b) => a.minX - b.minX);
  const laid: LaidBox[] = [];
  let [end, areaLeft, moment, looks] = [job.fromX, 0, 0, 0];
  for (const [i, kind] of order.entries()) {
    const { ways: own, area } = job.kinds[kind]!;
    let best: { way: number; x: number; y: number; ends: number } | null = null;
    for (const [way, box] of own.entries()) {
      const wished = ways[i]!;
      if (wished >= 0 && wished < own.length && wished !== way) continue;
      const spot = leftmost(job, down, box, best?.ends ?? Infinity);
      looks += down.length + 1;
      if (spot !== null) best = { way, ...spot, ends: spot.x + box.along };
    }
    if (best === null) {
      areaLeft += area;
      continue;
    }
    const { way, x, y, ends } = best;
    const box = own[way]!;
    laid.push({ kind, way, x, y });
    insert(down, { minX: x, minY: y, maxX: ends, maxY: y + box.across });
    end = Math.max(end, ends);
    moment += ends * area;
  }
  return { laid, end, areaLeft, moment, looks };
}

function insert(down: Box[], box: Box): void {
  let at = down.length;
  while (at > 0 && down[at - 1]!.minX > box.minX) at--;
  down.splice(at, 0, box);
}

/** The leftmost free place for a box that ends before `before`, the lowest of equals; null when there is none. */
function leftmost(
  job: MatchedJob,
  down: readonly Box[],
  box: MatchedWay,
  before: number,
): { readonly x: number; readonly y: number } | null {
  const rungsY = box.lattice?.y ?? null;
  let found: { x: number; y: number } | null = null;
  let limit = Math.min(before - box.along - ROUNDING, job.toX - box.along + ROUNDING);
  for (const y of heights(job, down, rungsY)) {
    if (y + box.across > job.toY + ROUNDING) break;
    const x = firstFree(job, down, box, y, limit);
    if (x === null) continue;
    found = { x, y };
    limit = x - ROUNDING;
  }
  return found;
}

/** Heights at which a box can rest: on the lower edge or on another box, brought up to a rung; ascending. */
function heights(job: MatchedJob, down: readonly Box[], rungs: Parameters<typeof rungUp>[0]): number[] {
  const out = [job.fromY, ...down.map(({ maxY }) => Math.max(job.fromY, maxY))].map((y) => rungUp(rungs, y));
  return out.sort((a, b) => a - b).filter((y, i) => i === 0 || y > out[i - 1]! + ROUNDING);
}

/** The leftmost place at a height that is free and not beyond `limit`. `down` by rising left side. */
function firstFree(
  job: MatchedJob,
  down: readonly Box[],
  box: MatchedWay,
  y: number,
  limit: number,
): number | null {
  const rungs = rungsAlong(box, y);
  let x = rungUp(rungs, job.fromX);
  for (const { minX, minY, maxX, maxY } of down) {
    if (minY >= y + box.across - ROUNDING || maxY <= y + ROUNDING || maxX <= x + ROUNDING) continue;
    if (minX >= x + box.along - ROUNDING) break;
    x = rungUp(rungs, maxX);
    if (x > limit) return null;
  }
  return x > limit ? null : x;
}

import type { Box } from "../../../geometry/box.ts";
import { type LayingRule, laidOn, leftOutOf, NOTHING, type Standing } from "./layingRule.ts";
import { type MatchedJob, type MatchedWay, ROUNDING, rungsAlong, rungUp } from "./matchedJob.ts";

/** What lies on the cloth by rising left side: boxes laid and what is missing of the cloth. */
interface Down extends Standing {
  readonly down: readonly Box[];
}

/**
 * Each box in the leftmost place on its rungs that is free, then the lowest; in the way that ends first unless one is
 * wished. Cost: O(boxes² · log boxes) for each box.
 */
export const leftmostRule: LayingRule<Down> = {
  hints: 0,
  start: (job) => ({ ...NOTHING, end: job.fromX, down: [...job.blocked].sort((a, b) => a.minX - b.minX) }),
  lay(job, before, kind, wished, _hint, spend) {
    const { ways: own } = job.kinds[kind]!;
    const { down } = before;
    let best: { way: number; x: number; y: number; ends: number } | null = null;
    for (const [way, box] of own.entries()) {
      if (wished >= 0 && wished < own.length && wished !== way) continue;
      const spot = leftmost(job, down, box, best?.ends ?? Infinity);
      spend(down.length + 1);
      if (spot !== null) best = { way, ...spot, ends: spot.x + box.along };
    }
    if (best === null) return { ...leftOutOf(job, before, kind), down };
    const { way, x, y, ends } = best;
    const box = { minX: x, minY: y, maxX: ends, maxY: y + own[way]!.across };
    return { ...laidOn(job, before, { kind, way, x, y }), down: inserted(down, box) };
  },
};

function inserted(down: readonly Box[], box: Box): readonly Box[] {
  const more = [...down];
  let at = more.length;
  while (at > 0 && more[at - 1]!.minX > box.minX) at--;
  more.splice(at, 0, box);
  return more;
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

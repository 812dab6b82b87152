import { isRectangleJob, rectangleJobOf } from "../../problem/rectangles/prepare.ts";
import type { PlacedRectangle, RectangleJob, Way } from "../../problem/rectangles/rectangleJob.ts";
import { regionPlanOf } from "../../problem/rectangles/regionPlan.ts";
import type { RegionJob } from "../../problem/region.ts";
import type { Engine, Search, SearchBudget } from "../../search/engine.ts";
import { seededRng } from "../../search/rng.ts";

/** More pieces are left to the other engines: this one looks at all pairs. */
const MOST_PIECES = 60;
const TRIES = 4000;
/** Looks between two yields: some five milliseconds. */
const SLICE = 200_000;

/**
 * Few rectangles round pinned ones on an open roll: each goes where it ends soonest, into holes too, in an order that
 * is bettered by exchanging two. The skyline of the other searches wastes what lies before and under pinned pieces.
 */
export const besidePinnedEngine: Engine = {
  id: "beside-pinned",
  isStart: true,
  accepts: (job) =>
    isRectangleJob(job) &&
    job.pinned.length > 0 &&
    job.region.length === null &&
    job.pieces.reduce((sum, { count }) => sum + count, 0) <= MOST_PIECES,
  search: layBesidePinned,
};

/** A box that is taken, in units. */
interface Taken {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

interface Laid {
  readonly rectangles: readonly PlacedRectangle[];
  readonly end: number;
  readonly looks: number;
}

function* layBesidePinned(job: RegionJob, budget: SearchBudget, seed: number): Search {
  const prepared = rectangleJobOf(job);
  const rng = seededRng(seed);
  const area = ({ across, along }: Way): number => across * along;
  let order = prepared.sizes
    .flatMap(({ copies }, size) => copies.map(() => size))
    .sort((a, b) => area(prepared.sizes[b]!.ways[0]!) - area(prepared.sizes[a]!.ways[0]!));
  let laid = inOrder(prepared, order);
  let evaluations = laid.looks;
  let best = regionPlanOf(prepared, laid.rectangles);
  let told = laid.end;
  yield { evaluations, plan: best, bound: null };
  let sinceYield = 0;
  for (let i = 0; i < TRIES && order.length > 1 && evaluations < budget.evaluations; i++) {
    const [a, b] = [rng.below(order.length), rng.below(order.length)];
    if (order[a] === order[b]) continue;
    const next =
      rng.below(2) === 0
        ? order.with(a, order[b]!).with(b, order[a]!)
        : order.toSpliced(a, 1).toSpliced(b, 0, order[a]!);
    const now = inOrder(prepared, next);
    evaluations += now.looks;
    sinceYield += now.looks;
    if (now.end <= laid.end) [order, laid] = [next, now];
    if (sinceYield < SLICE) continue;
    sinceYield = 0;
    const isNews = laid.end < told;
    if (isNews) [best, told] = [regionPlanOf(prepared, laid.rectangles), laid.end];
    yield { evaluations, plan: isNews ? best : null, bound: null };
  }
  if (laid.end < told) {
    best = regionPlanOf(prepared, laid.rectangles);
    yield { evaluations, plan: best, bound: null };
  }
  return best;
}

/** Each rectangle in turn where it ends soonest; of equal ends nearest to the lower edge. O(n⁴) at worst. */
function inOrder({ sizes, blocked, width, pinnedEnd }: RectangleJob, order: readonly number[]): Laid {
  const taken: Taken[] = blocked.map(({ fromAlong, toAlong, fromAcross, toAcross }) => ({
    ...{ x0: fromAlong, x1: toAlong, y0: fromAcross, y1: toAcross },
  }));
  const rectangles: PlacedRectangle[] = [];
  let end = pinnedEnd;
  let looks = 0;
  for (const size of order) {
    let best: PlacedRectangle | null = null;
    let bestEnd = Infinity;
    for (const [way, { along, across }] of sizes[size]!.ways.entries())
      for (const y of new Set([0, ...taken.map(({ y1 }) => Math.max(0, y1))])) {
        if (y + across > width) continue;
        const beside = taken.filter(({ y0, y1 }) => y0 < y + across && y < y1).sort((a, b) => a.x0 - b.x0);
        looks += taken.length;
        let x = 0;
        for (const one of beside) {
          if (one.x0 >= x + along) break;
          x = Math.max(x, one.x1);
        }
        if (x + along < bestEnd || (x + along === bestEnd && y < best!.across)) {
          best = { size, way, along: x, across: y };
          bestEnd = x + along;
        }
      }
    const { along, across } = sizes[size]!.ways[best!.way]!;
    rectangles.push(best!);
    taken.push({ x0: best!.along, x1: best!.along + along, y0: best!.across, y1: best!.across + across });
    end = Math.max(end, bestEnd);
  }
  return { rectangles, end, looks };
}

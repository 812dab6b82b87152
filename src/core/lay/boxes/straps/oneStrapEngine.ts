import { isRectangleJob, rectangleJobOf } from "../../problem/rectangles/prepare.ts";
import type { PlacedRectangle, RectangleJob } from "../../problem/rectangles/rectangleJob.ts";
import { provenLength, regionPlanOf } from "../../problem/rectangles/regionPlan.ts";
import { searchTablesOf } from "../../problem/rectangles/searchTables.ts";
import type { RegionJob } from "../../problem/region.ts";
import type { Engine, Search, SearchBudget } from "../../search/engine.ts";
import { lengthsForStraps } from "./lengthForStraps.ts";
import type { StrapOnCloth } from "./strapProblem.ts";
import { type StrapYield, strapYield } from "./strapYield.ts";

/** Fills tried for one length, so that a turn stays some 20 ms. */
const TRIES_PER_TURN = 3e5;
/** What one length costs, in the evaluations of the other engines. */
const EVALUATIONS_PER_TURN = 10_000;

/** Copies of one rectangle that may lie both ways, as the straps of one kind: by blocks, mostly with proof. */
export const oneStrapEngine: Engine = {
  id: "one-strap",
  accepts: (job) => {
    if (job.region.flaws.length > 0 || job.pinned.length > 0 || !isRectangleJob(job)) return false;
    const { sizes } = rectangleJobOf(job);
    return sizes.length === 1 && sizes[0]!.ways.length === 2;
  },
  search: searchOneStrap,
};

function* searchOneStrap(job: RegionJob, budget: SearchBudget): Search {
  const prepared = rectangleJobOf(job);
  const tables = searchTablesOf(prepared);
  const [size] = prepared.sizes;
  const [lengthwise] = size!.ways;
  const wanted = size!.copies.length;
  // Units of the job stand for mm: whole numbers with the gap folded in.
  const cloth: StrapOnCloth = {
    strapWidth: lengthwise!.across,
    strapLength: lengthwise!.along,
    clothWidth: prepared.width,
    gap: 0,
    directions: "both",
  };
  let evaluations = 0;
  let plan = regionPlanOf(prepared, []);
  if (prepared.length !== null) {
    const most = strapYield(cloth, prepared.length, TRIES_PER_TURN);
    plan = regionPlanOf(prepared, rectanglesOf(prepared, most, wanted));
    evaluations += EVALUATIONS_PER_TURN;
    yield { evaluations, plan, bound: null };
    if (most.count < wanted || job.goal === "most") return plan;
  }
  let shortest = Infinity;
  for (const found of lengthsForStraps(cloth, wanted, TRIES_PER_TURN)) {
    const better = found.length < shortest;
    if (better) {
      shortest = found.length;
      plan = regionPlanOf(prepared, rectanglesOf(prepared, found.plan, wanted));
    }
    evaluations += EVALUATIONS_PER_TURN;
    const bound = job.goal === "shortest" ? provenLength(prepared, tables, found.bound) : null;
    yield { evaluations, plan: better ? plan : null, bound };
    if (evaluations >= budget.evaluations) break;
  }
  return plan;
}

/** The first `wanted` straps of a plan, from the cut end on. */
function rectanglesOf(prepared: RectangleJob, found: StrapYield, wanted: number): PlacedRectangle[] {
  const end = (x: number, rotation: 0 | 90): number => x + prepared.sizes[0]!.ways[rotation === 0 ? 0 : 1]!.along;
  return [...found.placements]
    .sort((a, b) => end(a.x, a.rotation) - end(b.x, b.rotation) || a.y - b.y)
    .slice(0, wanted)
    .map(({ x, y, rotation }) => ({ size: 0, way: rotation === 0 ? 0 : 1, along: x, across: y }));
}

import { quickBound } from "../bounds/quickBound.ts";
import { reachableLengths } from "../bounds/reachableLengths.ts";
import { isRectangleJob, rectangleJobOf } from "../rectangles/prepare.ts";
import type { PlacedRectangle, RectangleJob } from "../rectangles/rectangleJob.ts";
import { lengthOfEnd, regionPlanOf } from "../rectangles/regionPlan.ts";
import { type SearchTables, searchTablesOf } from "../rectangles/searchTables.ts";
import type { Engine, RegionJob, RegionPlan, Search, SearchBudget } from "../types.ts";
import { cutTreeOf } from "./cutTree.ts";
import type { LaidWay } from "./rulerBeam.ts";
import { rulerSearch } from "./rulerSearch.ts";
import { planEnd } from "./segments.ts";
import { piecesOf, tidyTree } from "./tidyTree.ts";

/** Rectangles laid so that edge-to-edge ruler cuts part them all, in any order of rips and crosscuts. */
export const rulerEngine: Engine = {
  id: "ruler",
  accepts: isUnblockedRectangleJob,
  search: (job, budget, seed) => searchRuler(job, Infinity, budget, seed),
};

/**
 * As `rulerEngine`, with three stages only: crosscuts over the whole width, rips, crosscuts, and a trim to width.
 * Open cloth only.
 */
export const fewStagesEngine: Engine = {
  id: "ruler-in-three-stages",
  accepts: (job) => job.goal === "shortest" && isUnblockedRectangleJob(job),
  search: (job, budget, seed) => searchRuler(job, 3, budget, seed),
};

/** A ruler cannot go round flaws or pieces pinned down. */
function isUnblockedRectangleJob(job: RegionJob): boolean {
  return job.region.flaws.length === 0 && job.pinned.length === 0 && isRectangleJob(job);
}

function* searchRuler(job: RegionJob, stages: number, budget: SearchBudget, seed: number): Search {
  const prepared = rectangleJobOf(job);
  const tables = searchTablesOf(prepared);
  let plan: RegionPlan = regionPlanOf(prepared, []);
  if (tables.pieces === 0) {
    yield { evaluations: 0, plan, bound: job.goal === "shortest" ? 0 : null };
    return plan;
  }
  const least = quickBound(tables);
  const atLeast = reachableLengths(tables, 2 * least).atLeast(least);
  const bound = job.goal === "shortest" ? lengthOfEnd(prepared, atLeast) : null;
  const search = rulerSearch({ tables, stages, limit: prepared.length ?? Infinity, atLeast }, seed);
  for (let turn = search.next(); !turn.done; ) {
    const { evaluations, plan: found } = turn.value;
    if (found) plan = regionPlanOf(prepared, tidiedRectangles(tables, found));
    const elsewhere = yield { evaluations, plan: found && plan, bound };
    if (evaluations >= budget.evaluations) return plan;
    const adopts = elsewhere !== undefined && isComplete(prepared, elsewhere);
    if (adopts && (!isComplete(prepared, plan) || elsewhere.length < plan.length)) {
      plan = elsewhere;
      turn = search.next(endOf(prepared, elsewhere));
    } else turn = search.next();
  }
  return plan;
}

/** The plan with equal cuts side by side and what is left over gathered; see `tidyTree`. */
function tidiedRectangles(tables: SearchTables, laid: readonly LaidWay[]): PlacedRectangle[] {
  const boxes = laid.map(({ way, along, across }) => {
    return { x: along, y: across, dx: tables.wayAlong[way]!, dy: tables.wayAcross[way]! };
  });
  const tree = cutTreeOf({ x: 0, y: 0, dx: planEnd(tables, laid), dy: tables.width }, boxes, 0);
  if (tree === null) throw new RangeError("rulerEngine: the plan found cannot be cut edge to edge");
  const places = piecesOf(tidyTree(tree, 0));
  return laid.map(({ way }, i) => {
    const { x, y } = places.get(i)!;
    return { size: tables.waySize[way]!, way: tables.wayIndex[way]!, along: x, across: y };
  });
}

function isComplete(prepared: RectangleJob, plan: RegionPlan): boolean {
  return plan.left.every((count, piece) => count <= prepared.impossible[piece]!);
}

function endOf(prepared: RectangleJob, plan: RegionPlan): number {
  const { originX, job, unit } = prepared;
  return Math.ceil((plan.length - originX - job.margin + job.gap) / unit - 1e-6);
}

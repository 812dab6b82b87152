import { jointBound } from "../../bounds/jointBound.ts";
import { quickBound } from "../../bounds/quickBound.ts";
import { reachableLengths } from "../../bounds/reachableLengths.ts";
import { isRectangleJob, rectangleJobOf } from "../../problem/rectangles/prepare.ts";
import type { PlacedRectangle, RectangleJob } from "../../problem/rectangles/rectangleJob.ts";
import { provenLength, regionPlanOf } from "../../problem/rectangles/regionPlan.ts";
import { type SearchTables, searchTablesOf } from "../../problem/rectangles/searchTables.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { inOneGo, nextTurn } from "../../search/breath.ts";
import type { Engine, Search, SearchBudget } from "../../search/engine.ts";
import { closeTree } from "../cuts/closeTree.ts";
import { cutTreeOf } from "../cuts/cutTree.ts";
import { narrowStrips } from "../cuts/narrowStrips.ts";
import { piecesOf, tidyTree } from "../cuts/tidyTree.ts";
import type { LaidWay } from "./beam/rulerBeam.ts";
import { planEnd } from "./beam/segments.ts";
import { LOOKS_PER_EVALUATION, type NarrowWish, rulerSearch } from "./rulerSearch.ts";
import { isSheet } from "./shelves/sheetSearch.ts";

/** mm that a ruler cannot tell from nothing. */
const TOLERANCE = 1e-3;
/** How much longer than the shortest possible a plan may be for having no narrow strips, as a share. */
const ALLOWANCE = 0.03;
/** Evaluations, and their share of all, before a plan with narrow strips is handed over where there is one without. */
const HOLD_BACK = 1_000_000;
const HOLD_SHARE = 0.5;
/** Effort for the bound, as a share of the search's. */
const BOUND_SHARE = 0.25;

/** Rectangles laid so that edge-to-edge ruler cuts part them all, in any order of rips and crosscuts. */
export const rulerEngine: Engine = {
  id: "ruler",
  accepts: isUnblockedRectangleJob,
  search: (job, budget, seed) => searchRuler(job, Infinity, budget, seed),
};

/**
 * As `rulerEngine`, with three stages only: crosscuts over the whole width, rips, crosscuts, and a trim to width.
 * Open cloth, and closed cloth of few units.
 */
export const fewStagesEngine: Engine = {
  id: "ruler-in-three-stages",
  accepts: (job) => isUnblockedRectangleJob(job) && (job.goal === "shortest" || isSheetJob(job)),
  search: (job, budget, seed) => searchRuler(job, 3, budget, seed),
};

/** As `fewStagesEngine` with two stages: crosscuts over the whole width, rips, and a trim of single pieces. */
export const twoStagesEngine: Engine = {
  id: "ruler-in-two-stages",
  accepts: fewStagesEngine.accepts,
  search: (job, budget, seed) => searchRuler(job, 2, budget, seed),
};

/** A ruler cannot go round flaws or pieces pinned down. */
function isUnblockedRectangleJob(job: RegionJob): boolean {
  return job.region.flaws.length === 0 && job.pinned.length === 0 && isRectangleJob(job);
}

/** Closed cloth that shelves by knapsack can fill. */
function isSheetJob(job: RegionJob): boolean {
  const prepared = rectangleJobOf(job);
  return prepared.length !== null && isSheet(searchTablesOf(prepared), prepared.length);
}

function* searchRuler(job: RegionJob, stages: number, budget: SearchBudget, seed: number): Search {
  const prepared = rectangleJobOf(job);
  const tables = searchTablesOf(prepared);
  let plan: RegionPlan = regionPlanOf(prepared, []);
  if (tables.pieces === 0) {
    yield { evaluations: 0, plan, bound: job.goal === "shortest" ? 0 : null };
    return plan;
  }
  const limit = prepared.length ?? Infinity;
  const bound = risingBound(tables, job.goal === "shortest");
  const boundNow = (): number | null =>
    job.goal === "shortest" ? provenLength(prepared, tables, bound.value()) : null;
  const narrow = narrowWish(prepared, tables);
  const search = rulerSearch({ tables, stages, limit, atLeast: bound.value, narrow }, seed);
  const holdBack = Math.min(HOLD_BACK, HOLD_SHARE * budget.evaluations);
  let heldBack: readonly LaidWay[] | null = null;
  for (let turn = search.next(); !turn.done; ) {
    const { evaluations, plan: better, isNarrow } = turn.value;
    // A shorter plan is not taken back: one with narrow strips waits until plans without had their time.
    const waits = isNarrow && evaluations < holdBack && isComplete(prepared, plan) && plan.placements.length > 0;
    heldBack = better ?? heldBack;
    const found = waits ? null : heldBack;
    if (found) {
      plan = regionPlanOf(prepared, tidiedRectangles(tables, found));
      heldBack = null;
    }
    const complete = isComplete(prepared, plan);
    const spent = evaluations + (complete ? bound.rise(evaluations * BOUND_SHARE, endOf(prepared, plan)) : 0);
    const elsewhere = yield { evaluations: spent, plan: found && plan, bound: boundNow() };
    // An open roll takes every piece, so there a plan that leaves some out is none.
    if (spent >= budget.evaluations && (complete || job.goal === "most")) return plan;
    const adopts = elsewhere !== undefined && isComplete(prepared, elsewhere);
    if (adopts && (!complete || elsewhere.length < plan.length)) {
      plan = elsewhere;
      turn = search.next(endOf(prepared, elsewhere));
    } else turn = search.next();
  }
  return heldBack === null ? plan : regionPlanOf(prepared, tidiedRectangles(tables, heldBack));
}

/** Strips narrower than the job's least one, measured as they are cut; undefined where any will do. */
function narrowWish(prepared: RectangleJob, tables: SearchTables): NarrowWish | undefined {
  const { job, unit, length } = prepared;
  const { leastStrip = 0, looseEdges = { side: false, end: false }, gap } = job;
  if (leastStrip <= 0) return undefined;
  const has = (laid: readonly LaidWay[]): boolean => {
    // As the pieces come to lie: tidied, with the gap as cloth between them.
    const boxes = tidiedRectangles(tables, laid).map(({ along, across }, i) => ({
      ...{ x: along * unit, y: across * unit },
      dx: tables.wayAlong[laid[i]!.way]! * unit - gap,
      dy: tables.wayAcross[laid[i]!.way]! * unit - gap,
    }));
    const end = length ?? planEnd(tables, laid);
    const cloth = { x: 0, y: 0, dx: end * unit - gap, dy: tables.width * unit - gap };
    const tree = cutTreeOf(cloth, boxes, TOLERANCE);
    if (tree === null) return false;
    const closed = closeTree(tidyTree(tree, TOLERANCE), length === null, TOLERANCE);
    return narrowStrips(closed, leastStrip, looseEdges, TOLERANCE).length > 0;
  };
  const rule = {
    least: Math.ceil(leastStrip / unit - 1e-9),
    sideLoose: looseEdges.side,
    endLoose: looseEdges.end || length === null,
  };
  return { rule, has, allowance: Math.ceil(ALLOWANCE * quickBound(tables)) };
}

/** A bound that gets better with effort. */
interface RisingBound {
  /** Least end of any plan, units. */
  value(): number;
  /** Works until it has cost `effort` evaluations in all, given a plan that ends at `end`; what it has cost. */
  rise(effort: number, end: number): number;
}

/** The quick bound at once, then the joint bar bound; of free plans, so it holds for edge-to-edge ones as well. */
function risingBound(tables: SearchTables, wanted: boolean): RisingBound {
  let value = quickBound(tables);
  let begun = false;
  let end = Infinity;
  let spent = 0;
  let steps: ReturnType<typeof jointBound> | null = null;
  const rise = (effort: number, reached: number): number => {
    end = reached;
    if (wanted && end > value && !begun) {
      begun = true;
      const reachable = reachableLengths(tables, end);
      value = reachable.atLeast(value);
      steps = jointBound(tables, reachable, value, () => end);
    }
    while (steps !== null && spent < effort && end > value) {
      const step = inOneGo(nextTurn(steps));
      spent += step.done ? 0 : step.value.work / LOOKS_PER_EVALUATION;
      value = Math.max(value, step.done ? step.value : step.value.bound);
      if (step.done) steps = null;
    }
    return spent;
  };
  return { value: () => value, rise };
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

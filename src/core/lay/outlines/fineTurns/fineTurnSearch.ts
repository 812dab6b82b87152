import { isLoose } from "../../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { nextTurn } from "../../search/breath.ts";
import { isBetterRegionPlan } from "../../search/comparePlans.ts";
import type { Search, SearchStep } from "../../search/engine.ts";
import { fineTurnJob } from "./fineTurnJob.ts";

/** A search of a job from a given plan, or from nothing. */
export type SearchFrom = (job: RegionJob, evaluations: number, seed: number, start: RegionPlan | null) => Search;

/** Evaluations of the coarse search before the first look at finer turns; twice as many before each further one. */
const COARSE = 2_000_000;
/** Share of a given effort kept for a last look. */
const KEPT_SHARE = 0.12;
/** Effort of a look as a share of the coarse effort so far; and for what share of that nothing must have come first. */
const FINE_SHARE = 0.25;
const LEAST_FINE = 400_000;
const QUIET_SHARE = 0.4;
/** Halvings of the first step in one look: from half the distance of the turns tried to an eighth of that. */
const STEPS = 4;
/** Half the distance of the turns tried of a piece that may lie at any. */
const FREE_STEP = 7.5;

/** Whether finer turns can be looked for: all pieces on one open roll, of which some may lie at more turns than are tried. */
export function hasFineTurns(job: RegionJob): boolean {
  return job.goal === "shortest" && job.pinned.length === 0 && job.pieces.some(isLoose);
}

/**
 * Searches by the turns that are tried, and from time to time goes on from the best plan with turns near those that its
 * copies have, in steps that get finer. Results depend on the arguments alone.
 */
export function* fineTurnSearch(job: RegionJob, evaluations: number, seed: number, from: SearchFrom): Search {
  const coarse = from(job, Infinity, seed, null);
  const most = evaluations * (1 - KEPT_SHARE);
  const tilts = job.pieces.map(({ freeTurn, tilt = 0 }) => (freeTurn ? FREE_STEP : tilt / 2));
  let best: RegionPlan | null = null;
  let bound: number | null = null;
  let told: RegionPlan | undefined;
  let spentCoarse = 0;
  let spentFine = 0;
  let gainedAt = 0;
  let isOver = false;
  const take = (plan: RegionPlan | null): boolean => {
    if (plan === null || !isBetterRegionPlan(job.pieces, plan, best)) return false;
    best = plan;
    return true;
  };
  const step = (isBetter: boolean): SearchStep => ({
    evaluations: spentCoarse + spentFine,
    plan: isBetter ? best : null,
    bound,
  });
  const hear = (news: RegionPlan | undefined): void => {
    if (news === undefined) return;
    told = news;
    take(news);
  };
  for (let look = 0; ; look++) {
    const until = Math.min(COARSE * 2 ** look, most);
    while (!isOver && spentCoarse < until) {
      const news = told;
      told = undefined;
      const turn = yield* nextTurn(coarse, news);
      if (turn.done) isOver = true;
      else {
        spentCoarse = turn.value.evaluations;
        bound = turn.value.bound ?? bound;
      }
      const isBetter = take(turn.done ? turn.value : turn.value.plan);
      if (isBetter) gainedAt = spentCoarse;
      hear(yield step(isBetter));
    }
    const isLast = isOver || spentCoarse >= most;
    // While coarse turns still gain, their effort is spent better there.
    if (!isLast && spentCoarse - gainedAt < QUIET_SHARE * spentCoarse) continue;
    const before: RegionPlan | null = best;
    for (let k = 0; k < STEPS && best !== null && spentCoarse + spentFine < evaluations; k++) {
      const effort = Math.min(
        Math.max(LEAST_FINE, FINE_SHARE * spentCoarse) / STEPS,
        evaluations - spentCoarse - spentFine,
      );
      const near = fineTurnJob(job, best, Math.max(...tilts) / 2 ** k);
      const fine = from(near.job, effort, seed + look * STEPS + k + 1, near.start);
      const spentBefore = spentFine;
      for (;;) {
        const turn = yield* nextTurn(fine);
        const plan: RegionPlan | null = turn.done ? turn.value : turn.value.plan;
        if (!turn.done) spentFine = spentBefore + turn.value.evaluations;
        hear(yield step(take(plan?.left.every((count) => count === 0) ? near.back(plan) : null)));
        if (turn.done || spentFine - spentBefore >= effort) break;
      }
    }
    const mayGainMore = before !== best || !isLast;
    if (spentCoarse + spentFine >= evaluations || !mayGainMore) return best ?? emptyPlan(job);
  }
}

function emptyPlan(job: RegionJob): RegionPlan {
  return { placements: [], left: job.pieces.map(({ count }) => count), length: 0 };
}

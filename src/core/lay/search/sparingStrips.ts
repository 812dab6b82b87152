import type { RegionJob, RegionPlan } from "../problem/region.ts";
import { nextTurn } from "./breath.ts";
import { isBetterRegionPlan } from "./comparePlans.ts";
import type { Search, SearchBudget } from "./engine.ts";

/** How much longer a plan may be for having no narrow strips, as a share. */
const ALLOWANCE = 0.03;

/** What a search that spares strips lays itself out for, and where the next one begins: later it hardly changes its phases. */
const LAID_OUT_FOR = 3_000_000;
const ANEW_AFTER = 750_000;

/** A search of a job with its own effort and seed. */
type SearchOf = (job: RegionJob, budget: SearchBudget, seed: number) => Search;

interface Runner {
  readonly search: Search;
  evaluations: number;
  isDone: boolean;
}

/**
 * Two searches of one job by turns, since plans without strips too narrow for the ruler lie elsewhere than the shortest:
 * one in which such strips count as much length, begun anew now and then since much depends on where it
 * begins, and one that does not mind them. What has such strips counts as 3 % longer here and for whoever hears of it, so
 * that a longer plan without takes its place.
 */
export function* sparingStrips(searchOf: SearchOf, job: RegionJob, budget: SearchBudget, seed: number): Search {
  const runnerOf = (search: Search): Runner => ({ search, evaluations: 0, isDone: false });
  const sparing = runnerOf(begunAnew(searchOf, job, budget, seed));
  const any = runnerOf(searchOf({ ...job, leastStrip: undefined }, budget, seed));
  let best: RegionPlan | null = null;
  let bound: number | null = null;
  for (;;) {
    const runner = any.isDone || (!sparing.isDone && sparing.evaluations <= any.evaluations) ? sparing : any;
    const turn = yield* nextTurn(runner.search);
    const plan = turn.done ? turn.value : turn.value.plan;
    if (turn.done) runner.isDone = true;
    else {
      runner.evaluations = turn.value.evaluations;
      bound = turn.value.bound === null ? bound : Math.max(bound ?? 0, turn.value.bound);
    }
    const evaluations = sparing.evaluations + any.evaluations;
    const isSpared = runner === sparing && (plan?.toll ?? 0) === 0;
    const weighed: RegionPlan | null = plan && { ...plan, toll: isSpared ? 0 : ALLOWANCE * plan.length };
    const isNews: boolean = weighed !== null && isBetterRegionPlan(job.pieces, weighed, best);
    if (isNews) best = weighed;
    const isOver = (sparing.isDone && any.isDone) || (best !== null && evaluations >= budget.evaluations);
    if (isOver) return best!;
    yield { evaluations, plan: isNews ? best : null, bound };
  }
}

/** Searches of one job, each with another seed, until the budget is spent. */
function* begunAnew(searchOf: SearchOf, job: RegionJob, budget: SearchBudget, seed: number): Search {
  let best: RegionPlan | null = null;
  let gone = 0;
  for (let round = 0; ; round++) {
    const search = searchOf(job, { evaluations: LAID_OUT_FOR }, seed + round);
    let spent = 0;
    while (spent < ANEW_AFTER) {
      const turn = yield* nextTurn(search);
      const plan: RegionPlan | null = turn.done ? turn.value : turn.value.plan;
      const isBetter: boolean = plan !== null && isBetterRegionPlan(job.pieces, plan, best);
      if (isBetter) best = plan;
      // One that ends by itself has nothing left to look for.
      if (turn.done) return best!;
      spent = turn.value.evaluations;
      yield { ...turn.value, evaluations: gone + spent, plan: isBetter ? best : null };
    }
    gone += spent;
    if (gone >= budget.evaluations && best !== null) return best;
  }
}

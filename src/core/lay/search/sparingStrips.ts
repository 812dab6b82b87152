import type { RegionJob, RegionPlan } from "../problem/region.ts";
import { nextTurn } from "./breath.ts";
import { isBetterRegionPlan } from "./comparePlans.ts";
import type { Search, SearchBudget } from "./engine.ts";

/** How much longer a plan may be for having no narrow strips, as a share. */
const ALLOWANCE = 0.03;
/** Evaluations, and their share of all, before a plan with such strips is told where there is none yet, and where there is one. */
const FIRST = { most: 100_000, share: 0.05 };
const LATER = { most: 2_000_000, share: 0.5 };

/** What a search that spares strips lays itself out for, and where the next one begins: later it hardly changes its phases. */
const LAID_OUT_FOR = 3_000_000;
const ANEW_AFTER = 750_000;

/** A search of a job with its own effort and seed. */
type SearchOf = (job: RegionJob, budget: SearchBudget, seed: number) => Search;

interface Runner {
  readonly search: Search;
  evaluations: number;
  plan: RegionPlan | null;
  isDone: boolean;
}

/**
 * Two searches of one job by turns, since plans without strips too narrow for the ruler lie elsewhere than the shortest:
 * one in which such strips count as much length, begun anew now and then since much depends on where it
 * begins, and one that does not mind them. The first one's plan is taken where it
 * has none of them and is at most 3 % longer. Whoever hears of plans does not give a shorter one back, so the second one's
 * wait until the first has had its time.
 */
export function* sparingStrips(searchOf: SearchOf, job: RegionJob, budget: SearchBudget, seed: number): Search {
  const runnerOf = (search: Search): Runner => ({ search, evaluations: 0, plan: null, isDone: false });
  const sparing = runnerOf(begunAnew(searchOf, job, budget, seed));
  const any = runnerOf(searchOf({ ...job, leastStrip: undefined }, budget, seed));
  let told: RegionPlan | null = null;
  let bound: number | null = null;
  const chosen = (): RegionPlan | null => {
    if (sparing.plan === null || any.plan === null) return sparing.plan ?? any.plan;
    const isSpared = (sparing.plan.toll ?? 0) === 0;
    const asLong = { ...any.plan, length: any.plan.length * (isSpared ? 1 + ALLOWANCE : 1) };
    return isBetterRegionPlan(job.pieces, asLong, { ...sparing.plan, toll: 0 }) ? any.plan : sparing.plan;
  };
  for (;;) {
    const runner = any.isDone || (!sparing.isDone && sparing.evaluations <= any.evaluations) ? sparing : any;
    const turn = yield* nextTurn(runner.search);
    if (turn.done) {
      runner.plan = turn.value;
      runner.isDone = true;
    } else {
      runner.evaluations = turn.value.evaluations;
      runner.plan = turn.value.plan ?? runner.plan;
      bound = turn.value.bound === null ? bound : Math.max(bound ?? 0, turn.value.bound);
    }
    const evaluations = sparing.evaluations + any.evaluations;
    const best = chosen();
    const isOver = (sparing.isDone && any.isDone) || (best !== null && evaluations >= budget.evaluations);
    if (isOver) return best!;
    const { most, share } = told === null ? FIRST : LATER;
    const hasStrips = best === any.plan || (best?.toll ?? 0) > 0;
    const waits = hasStrips && evaluations < Math.min(most, share * budget.evaluations);
    const isNews: boolean = best !== null && !waits && isBetterRegionPlan(job.pieces, { ...best, toll: 0 }, told);
    if (isNews) told = { ...best!, toll: 0 };
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

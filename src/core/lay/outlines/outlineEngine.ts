import type { RegionJob, RegionPlan } from "../problem/region.ts";
import { BREATH } from "../search/breath.ts";
import type { Engine, Search } from "../search/engine.ts";
import { compileSteps } from "./compile/compileJob.ts";
import { FILL_TUNING } from "./fillUp/fillRegion.ts";
import { fineTurnSearch, hasFineTurns, type SearchFrom } from "./fineTurns/fineTurnSearch.ts";
import { OutlineRun, type OutlineTuning } from "./outlineRun.ts";
import { IMPROVE_TUNING } from "./search/improve.ts";
import { SEPARATION_TUNING } from "./search/separate.ts";

/** A turn of the generator ends after so many evaluations, or pauses of the search, whichever comes first: about 5 ms. */
const EVALUATIONS_PER_TURN = 8_000;
const PAUSES_PER_TURN = 3;

export const OUTLINE_TUNING: OutlineTuning = {
  separation: SEPARATION_TUNING,
  improve: IMPROVE_TUNING,
  fill: FILL_TUNING,
  repeats: true,
};

function* turnsOf(
  job: RegionJob,
  evaluations: number,
  seed: number,
  tuning: OutlineTuning,
  start: RegionPlan | null,
): Search {
  const compiling = compileSteps(job);
  let compiled = compiling.next();
  for (; !compiled.done; compiled = compiling.next()) yield { evaluations: 0, plan: null, bound: null };
  const run = new OutlineRun(compiled.value, seed, tuning, start);
  const { state } = run;
  const step = () => {
    const plan = run.fresh;
    run.fresh = null;
    return { evaluations: state.evaluations, plan, bound: run.bound };
  };
  let turned = 0;
  let pauses = 0;
  let { built } = state.store;
  yield BREATH;
  for (const pause of run.run(evaluations)) {
    if (pause === BREATH) {
      yield BREATH;
      continue;
    }
    if (state.evaluations > evaluations) break;
    pauses++;
    const isShort = state.evaluations - turned < EVALUATIONS_PER_TURN && pauses < PAUSES_PER_TURN;
    if (isShort && run.fresh === null) {
      // A no-fit polygon takes some milliseconds.
      if (state.store.built > built) yield BREATH;
      built = state.store.built;
      continue;
    }
    built = state.store.built;
    turned = state.evaluations;
    pauses = 0;
    const told: RegionPlan | undefined = yield step();
    if (told !== undefined) run.offer(told);
  }
  for (const _ of run.finish()) yield step();
  if (run.fresh !== null) yield step();
  return run.plan;
}

/** The outline engine with its own tuning. */
export function outlineEngineWith(tuning: OutlineTuning): Engine {
  return {
    id: "outlines",
    accepts: (job) => job.pieces.every((piece) => piece.outline.outer.length >= 6),
    search: (job, { evaluations }, seed) => {
      const from: SearchFrom = (near, effort, its, start) => turnsOf(near, effort, its, tuning, start);
      return hasFineTurns(job) ? fineTurnSearch(job, evaluations, seed, from) : from(job, evaluations, seed, null);
    },
  };
}

/** Lays any outlines in any region; see `docs/explanation/outline-search.md`. */
export const outlineEngine: Engine = outlineEngineWith(OUTLINE_TUNING);

import type { Engine, RegionJob, RegionPlan, Search, SearchBudget } from "../types.ts";
import { bottomLeft, byFallingArea } from "./bottomLeft.ts";
import { compileJob } from "./compileJob.ts";
import { LayState } from "./layState.ts";
import { NoFitStore } from "./noFitStore.ts";
import { planOf } from "./planOf.ts";

function* searchOutlines(job: RegionJob, budget: SearchBudget, _seed: number): Search {
  const compiled = compileJob(job);
  const state = new LayState(compiled, new NoFitStore(compiled));
  for (const _ of bottomLeft(state, byFallingArea(state))) {
    yield { evaluations: state.evaluations, plan: null, bound: null };
    if (state.evaluations > budget.evaluations) break;
  }
  const plan: RegionPlan = planOf(compiled, state.spots);
  yield { evaluations: state.evaluations, plan, bound: null };
  return plan;
}

/** Lays any outlines in any region; see `docs/explanation/outline-search.md`. */
export const outlineEngine: Engine = {
  id: "outlines",
  accepts: (job) => job.pieces.every((piece) => piece.outline.outer.length >= 6),
  search: searchOutlines,
};

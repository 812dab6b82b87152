import { seededRng } from "../rng.ts";
import type { Engine, RegionJob, RegionPlan, Search, SearchBudget } from "../types.ts";
import { bottomLeft, byFallingArea } from "./bottomLeft.ts";
import { compileJob } from "./compileJob.ts";
import { Improver } from "./improve.ts";
import { copySpots, emptySpots, LayState } from "./layState.ts";
import { NoFitStore } from "./noFitStore.ts";
import { planOf, spotsOf } from "./planOf.ts";
import { hasRepeats, layRepeats } from "./repeats/layRepeats.ts";
import { Separator } from "./separate.ts";
import { PlanVerifier } from "./verifyPlan.ts";

/** Evaluations between two looks at whether the best layout has become a plan worth handing out. */
const EVALUATIONS_PER_LOOK = 400_000;
/** Evaluations between two turns of the generator. */
const EVALUATIONS_PER_TURN = 12_000;

function* searchOutlines(job: RegionJob, budget: SearchBudget, seed: number): Search {
  const compiled = compileJob(job);
  const state = new LayState(compiled, new NoFitStore(compiled));
  for (const _ of bottomLeft(state, byFallingArea(state))) {
    yield { evaluations: state.evaluations, plan: null, bound: null };
  }
  const verifier = new PlanVerifier(job);
  let plan: RegionPlan = planOf(compiled, state.spots);
  const verified = emptySpots(state.count);
  copySpots(state.spots, verified);
  yield { evaluations: state.evaluations, plan, bound: null };
  if (state.count === 0 || plan.left.some((count) => count > 0)) return plan;
  if (hasRepeats(state)) {
    for (const _ of layRepeats(state, budget.evaluations)) {
      yield { evaluations: state.evaluations, plan: null, bound: null };
    }
  }
  const rng = seededRng(seed);
  const improver = new Improver(state, new Separator(state, rng), rng);
  let looked = state.evaluations;
  let turned = state.evaluations;
  const look = (): RegionPlan | null => {
    looked = state.evaluations;
    if (improver.best.maxX >= verified.maxX) return null;
    const next = planOf(compiled, improver.best);
    if (!verifier.passes(next)) {
      copySpots(verified, improver.best);
      return null;
    }
    copySpots(improver.best, verified);
    plan = next;
    return plan;
  };
  for (const _ of improver.run()) {
    if (state.evaluations > budget.evaluations) break;
    if (state.evaluations - turned < EVALUATIONS_PER_TURN) continue;
    turned = state.evaluations;
    const found = state.evaluations - looked > EVALUATIONS_PER_LOOK ? look() : null;
    const told: RegionPlan | undefined = yield { evaluations: state.evaluations, plan: found, bound: null };
    if (told === undefined) continue;
    const spots = emptySpots(state.count);
    if (spotsOf(compiled, told, spots)) improver.offer(spots);
  }
  look();
  return plan;
}

/** Lays any outlines in any region; see `docs/explanation/outline-search.md`. */
export const outlineEngine: Engine = {
  id: "outlines",
  accepts: (job) => job.pieces.every((piece) => piece.outline.outer.length >= 6),
  search: searchOutlines,
};

import { chooseEngines } from "../../lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../lay/problem/layProblem.ts";
import { arrange } from "../../lay/search/arrange/arrange.ts";
import { BREATH, type Breath, nextTurn } from "../../lay/search/breath.ts";
import type { CutMode } from "../../lay/search/engine.ts";

/** How long and how a quick plan is looked for. */
export interface QuickSearch {
  readonly mode: CutMode;
  readonly evaluations: number;
  readonly seed: number;
}

/** The best plan within so many evaluations; the first whole plan is waited for. */
export function* quickPlan(
  problem: LayProblem,
  { evaluations, mode, seed }: QuickSearch,
): Generator<Breath, LayPlan, undefined> {
  const search = arrange(problem, (job) => chooseEngines(job, mode), { evaluations }, seed);
  let best: LayPlan | null = null;
  for (;;) {
    const step: IteratorResult<{ evaluations: number; plan: LayPlan | null }, LayPlan> = yield* nextTurn(search);
    if (step.done) return step.value;
    best = step.value.plan ?? best;
    if (best !== null && step.value.evaluations >= evaluations) return best;
    yield BREATH;
  }
}

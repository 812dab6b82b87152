import type { LayPlan, LayProblem } from "../../problem/layProblem.ts";
import type { Breath } from "../breath.ts";
import type { SearchBudget } from "../engine.ts";

/** One turn of a search for a whole plan. `plan` is set only when it is better than every one before. */
export interface ArrangeStep {
  readonly evaluations: number;
  readonly plan: LayPlan | null;
}

/** A search for a plan on all stocks. A host may pass a better plan found elsewhere to `next(plan)`. */
export type Arrangement = Generator<ArrangeStep | Breath, LayPlan, LayPlan | undefined>;

/** A search for plans of problems with fewer rules than the one it is asked for. */
export type Arranger = (problem: LayProblem, budget: SearchBudget) => Arrangement;

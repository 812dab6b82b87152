import { choicesFrom, type LayChoice, searchChoices } from "../../core/lay/alternatives/searchChoices.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { BREATH } from "../../core/lay/search/breath.ts";
import { CHOICE_MODES } from "../../core/lay/search/engine.ts";
import type { SearchPool } from "../../worker/searchPool.ts";
import { timedSearch } from "../timedSearch.ts";

/** How long to look for choices. */
export interface ChoiceEffort {
  readonly seconds: number;
  readonly evaluations: number;
  readonly seed: number;
  readonly threads: number;
}

/**
 * The choices for one cloth. One thread shares its effort among all ways of cutting and looks for large offcuts as
 * well; several search each way together, one after another.
 */
export async function layChoices(
  problem: LayProblem,
  pool: SearchPool,
  { seconds, evaluations, seed, threads }: ChoiceEffort,
): Promise<readonly LayChoice[]> {
  if (threads === 1) return oneThread(problem, seconds, evaluations, seed);
  const plans: LayPlan[] = [];
  for (const mode of CHOICE_MODES) {
    const wish = { problem, mode, seed, evaluations: evaluations / CHOICE_MODES.length };
    const { plan } = await timedSearch(pool, wish, seconds / CHOICE_MODES.length, (found) =>
      plans.push(found.plan),
    );
    plans.push(plan);
  }
  return choicesFrom(problem, plans);
}

function oneThread(problem: LayProblem, seconds: number, evaluations: number, seed: number): readonly LayChoice[] {
  const end = performance.now() + 1000 * seconds;
  let choices: readonly LayChoice[] = [];
  for (const step of searchChoices(problem, { evaluations }, seed)) {
    if (step !== BREATH && step.choices) choices = step.choices;
    if (performance.now() > end && choices.length > 0) break;
  }
  return choices;
}

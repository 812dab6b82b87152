import { type RulerCuts, rulerCuts } from "../lay/alternatives/layFigures.ts";
import { checkCuts } from "../lay/check/checkCuts.ts";
import type { LayPlan, LayProblem } from "../lay/problem/layProblem.ts";

/**
 * The ruler cuts of a plan as they are told and printed, or null when straight cuts do not part its pieces. The checker
 * has carried them out; throws where it finds them untrue, which is our mistake and not the maker's.
 */
export function checkedCuts(problem: LayProblem, plan: LayPlan): readonly RulerCuts[] | null {
  const all = rulerCuts(problem, plan);
  for (const cuts of all ?? []) {
    const [first] = checkCuts(problem, cuts);
    if (first !== undefined)
      throw new Error(
        `checkedCuts: the checker refused cut ${first.step}: ${first.fault}, ${first.told} told, ${first.found} found`,
      );
  }
  return all;
}

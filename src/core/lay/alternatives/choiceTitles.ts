import type { LayPlan, LayProblem } from "../problem/layProblem.ts";
import { clothUsed } from "../problem/planSums.ts";
import { areaLeftOut, type ChoiceFor } from "../search/comparePlans.ts";
import type { LayChoice } from "./searchChoices.ts";

/** What a choice may be called: `most` where pieces have no place, `leftovers` where nothing comes off a roll. */
export type ChoiceTitle = ChoiceFor | "most" | "leftovers";

/** Lengths that differ by less are one to a maker, mm; areas by less than its square, mm². */
const SAME = 0.5;

/**
 * What a choice is truly best for. "Shortest" is a word about a roll, and about a job that is whole; the others stand
 * in for it. None of them is left where `beside`, a plan found by a longer search, lays more or takes less cloth.
 */
export function choiceTitles(
  problem: LayProblem,
  { best, plan }: Pick<LayChoice, "best" | "plan">,
  beside: LayPlan | null = null,
): readonly ChoiceTitle[] {
  const cloth = clothUsed(problem, plan);
  const more = beside === null ? 0 : areaLeftOut(problem, plan) - areaLeftOut(problem, beside);
  const isBeaten =
    more > SAME * SAME || (beside !== null && more > -SAME * SAME && cloth > clothUsed(problem, beside) + SAME);
  return best.flatMap((what): ChoiceTitle[] => {
    if (what !== "shortest") return [what];
    if (isBeaten) return [];
    if (plan.unplaced.length > 0) return ["most"];
    return [cloth > 0 ? "shortest" : "leftovers"];
  });
}

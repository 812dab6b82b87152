import { layFigures } from "../../core/lay/alternatives/layFigures.ts";
import type { CutMode } from "../../core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import type { Language } from "../../core/units/language.ts";
import { RULER_TEXTS } from "../../core/words/words.ts";

/** Crosswise, lengthwise, crosswise and a trim. */
const FEW_STAGES = 4;

/** What a plan did not keep of the way of cutting that was asked for; null when it kept it. */
export function modeNote(problem: LayProblem, plan: LayPlan, mode: CutMode, language: Language): string | null {
  if (mode === "free" || plan.placements.length === 0) return null;
  const texts = RULER_TEXTS[language];
  const { ruler } = layFigures(problem, plan);
  if (ruler === null) {
    if (problem.pinned.length > 0) return texts.freePinned;
    const aslant = problem.pieces.some(
      ({ freeTurn, orientations }) => !freeTurn && orientations.every(({ turnDeg }) => turnDeg % 90 !== 0),
    );
    return aslant ? texts.freeAslant : texts.freeCramped;
  }
  return mode === "few-stages" && ruler.stages > FEW_STAGES ? texts.moreStages(ruler.stages) : null;
}

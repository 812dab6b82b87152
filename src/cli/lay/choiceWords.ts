import { type ChoiceFor, type LayChoice, searchChoices } from "../../core/lay/choices/searchChoices.ts";
import type { LayProblem } from "../../core/lay/types.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";

const FOR: Readonly<Record<ChoiceFor, string>> = {
  shortest: "shortest",
  easiest: "easiest to cut",
  offcut: "largest useful offcut",
};

/** The three choices for one cloth, searched for `seconds`, a line each. */
export function choiceWords(problem: LayProblem, seconds: number, seed: number, style: LengthStyle): string[] {
  const end = performance.now() + 1000 * seconds;
  const search = searchChoices(problem, { evaluations: Infinity }, seed);
  let choices: readonly LayChoice[] = [];
  for (let step = search.next(); ; step = search.next()) {
    if (step.done) {
      choices = step.value;
      break;
    }
    if (step.value.choices) choices = step.value.choices;
    if (performance.now() > end && choices.length > 0) break;
  }
  return choices.map((choice) => choiceLine(choice, style));
}

function choiceLine({ best, figures, extraLength }: LayChoice, style: LengthStyle): string {
  const show = (mm: number): string => formatLength(mm, style);
  const { length, ruler, offcut } = figures;
  const price = extraLength > 1e-6 ? ` (${show(extraLength)} more)` : "";
  const cutting = ruler
    ? `ruler cuts: ${ruler.cuts}, ruler settings: ${ruler.settings}`
    : "cannot be cut edge to edge with a ruler";
  const left = offcut ? `largest offcut ${show(offcut.box.dx)} × ${show(offcut.box.dy)}` : "no useful offcut";
  return `${best.map((what) => FOR[what]).join(", ")}: ${show(length)}${price}; ${cutting}; ${left}`;
}

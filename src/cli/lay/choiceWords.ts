import { choiceTitles } from "../../core/lay/alternatives/choiceTitles.ts";
import type { LayChoice } from "../../core/lay/alternatives/searchChoices.ts";
import type { LayProblem } from "../../core/lay/problem/layProblem.ts";
import { copiesLeftOut } from "../../core/lay/problem/planSums.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** A choice on one line: what it is best for, its length and price, what it leaves out, cuts and what is left. */
export function choiceWords(
  problem: LayProblem,
  choice: LayChoice,
  style: LengthStyle,
  language: Language,
): string {
  const texts = CLI_TEXTS[language].lay;
  const show = (mm: number): string => formatLength(mm, style, language);
  const { plan, figures, extraLength } = choice;
  const { length, ruler, offcut } = figures;
  const titles = choiceTitles(problem, choice).map((title) => texts.best[title]);
  const price = extraLength > 1e-6 ? ` (${texts.longer(show(extraLength))})` : "";
  const cutting = ruler ? texts.rulerCuts(ruler.cuts, ruler.settings) : texts.noRuler;
  const left = offcut ? texts.largestOffcut(`${show(offcut.box.dx)} × ${show(offcut.box.dy)}`) : texts.noOffcut;
  const out = copiesLeftOut(plan);
  const parts = [`${show(length)}${price}`, ...(out > 0 ? [texts.leftOut(out)] : []), cutting, left];
  return `${titles.join(", ")}: ${parts.join("; ")}`;
}

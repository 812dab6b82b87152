import type { LayChoice } from "../../core/lay/choices/searchChoices.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { CLI_TEXTS } from "../words/cliTextTables.ts";

/** A choice on one line: what it is best for, its length and price, cuts and what is left. */
export function choiceWords(
  { best, figures, extraLength }: LayChoice,
  style: LengthStyle,
  language: Language,
): string {
  const texts = CLI_TEXTS[language].lay;
  const show = (mm: number): string => formatLength(mm, style, language);
  const { length, ruler, offcut } = figures;
  const price = extraLength > 1e-6 ? ` (${texts.longer(show(extraLength))})` : "";
  const cutting = ruler ? texts.rulerCuts(ruler.cuts, ruler.settings) : texts.noRuler;
  const left = offcut ? texts.largestOffcut(`${show(offcut.box.dx)} × ${show(offcut.box.dy)}`) : texts.noOffcut;
  return `${best.map((what) => texts.best[what]).join(", ")}: ${show(length)}${price}; ${cutting}; ${left}`;
}

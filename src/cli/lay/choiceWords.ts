import type { LayChoice } from "../../core/lay/choices/searchChoices.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { CliTexts } from "../words/cliTexts.ts";

/** A choice on one line: what it is best for, its length and price, cuts and what is left. */
export function choiceWords(
  { best, figures, extraLength }: LayChoice,
  style: LengthStyle,
  texts: CliTexts["lay"],
): string {
  const show = (mm: number): string => formatLength(mm, style);
  const { length, ruler, offcut } = figures;
  const price = extraLength > 1e-6 ? ` (${texts.longer(show(extraLength))})` : "";
  const cutting = ruler ? texts.rulerCuts(ruler.cuts, ruler.settings) : texts.noRuler;
  const left = offcut ? texts.largestOffcut(`${show(offcut.box.dx)} × ${show(offcut.box.dy)}`) : texts.noOffcut;
  return `${best.map((what) => texts.best[what]).join(", ")}: ${show(length)}${price}; ${cutting}; ${left}`;
}

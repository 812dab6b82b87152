import type { ChoiceFor, LayChoice } from "../../core/lay/choices/searchChoices.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";

const FOR: Readonly<Record<ChoiceFor, string>> = {
  shortest: "shortest",
  easiest: "easiest to cut",
  offcut: "largest useful offcut",
};

/** A choice on one line: what it is best for, its length and price, cuts and what is left. */
export function choiceWords({ best, figures, extraLength }: LayChoice, style: LengthStyle): string {
  const show = (mm: number): string => formatLength(mm, style);
  const { length, ruler, offcut } = figures;
  const price = extraLength > 1e-6 ? ` (${show(extraLength)} more)` : "";
  const cutting = ruler
    ? `ruler cuts: ${ruler.cuts}, ruler settings: ${ruler.settings}`
    : "cannot be cut edge to edge with a ruler";
  const left = offcut ? `largest offcut ${show(offcut.box.dx)} × ${show(offcut.box.dy)}` : "no useful offcut";
  return `${best.map((what) => FOR[what]).join(", ")}: ${show(length)}${price}; ${cutting}; ${left}`;
}

import { costOf, type JudgedCloth } from "../../core/job/laidCloth.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { money } from "../../export/cutsheet/layWords.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** Cost and price in sentences; none where prices are missing. */
export function costWords(laid: readonly JudgedCloth[], project: Project, language: Language): string[] {
  const texts = CLI_TEXTS[language].lay;
  const { toPay, clothPerBag, costPerBag, pricePerBag, markup, margin } = costOf(laid, project);
  const words: string[] = [];
  if (toPay !== null && toPay > 0) words.push(texts.toPay(money(toPay, project, language)));
  if (clothPerBag !== null && clothPerBag > 0) words.push(texts.clothOfBag(money(clothPerBag, project, language)));
  if (costPerBag !== null && pricePerBag !== null && markup !== null && margin !== null)
    words.push(
      texts.price(
        money(costPerBag, project, language),
        money(pricePerBag, project, language),
        percent(markup, language),
        percent(margin, language),
      ),
    );
  return words;
}

function percent(share: number, language: Language): string {
  return withDecimalSign(`${Number((100 * share).toFixed(1))} %`, language);
}

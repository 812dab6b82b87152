import { type BoughtCloth, costOf } from "../../core/job/laidCloth.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { moneyText } from "../../export/cutsheet/moneyText.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** Cost and price in sentences; none where prices are missing. */
export function costWords(laid: readonly BoughtCloth[], project: Project, language: Language): string[] {
  const texts = CLI_TEXTS[language].lay;
  const costs = costOf(laid, project);
  const { total, costPerBag, pricePerBag, markup, margin, batchPrice, batchLeft } = costs;
  const write = (minor: number): string => moneyText(minor, project.currency, language);
  const said = (minor: number | null, say: (money: string) => string): string[] =>
    minor !== null && minor > 0 ? [say(write(minor))] : [];
  const isPriced = costPerBag !== null && pricePerBag !== null && markup !== null && margin !== null;
  const wasted = costs.cloths.reduce<number | null>(
    (sum, cloth) => (sum === null || cloth.wasted === null ? null : sum + cloth.wasted),
    0,
  );
  return [
    ...said(costs.toPay, texts.toPay),
    ...said(costs.suppliesToPay, texts.suppliesToPay),
    ...said(costs.clothPerBag, texts.clothOfBag),
    ...said(wasted, texts.wasted),
    ...(isPriced
      ? [texts.price(write(costPerBag), write(pricePerBag), percent(markup, language), percent(margin, language))]
      : said(costPerBag, texts.costOfBag)),
    ...said(costs.priceWithTax, texts.priceWithTax),
    ...(project.bags > 1 && total !== null && batchPrice !== null && batchLeft !== null
      ? [texts.batch(project.bags, write(total), write(batchPrice), write(batchLeft))]
      : []),
  ];
}

function percent(share: number, language: Language): string {
  return withDecimalSign(`${Number((100 * share).toFixed(1))} %`, language);
}

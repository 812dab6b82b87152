import { type BagCost, bagCost } from "../../core/buying/bagCost.ts";
import type { Project } from "../../core/project/project.ts";
import { money } from "../../export/cutsheet/layWords.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import type { LaidCloth } from "./laidProject.ts";

/** What all cloths of a project cost together. */
export function costOf(laid: readonly LaidCloth[], { bags, pricing }: Project): BagCost {
  return bagCost(
    laid.map(({ purchase }) => purchase),
    bags,
    pricing,
  );
}

/** Cost and price in sentences; none where prices are missing. */
export function costWords(laid: readonly LaidCloth[], project: Project, texts: CliTexts["lay"]): string[] {
  const { toPay, clothPerBag, costPerBag, pricePerBag, markup, margin } = costOf(laid, project);
  const words: string[] = [];
  if (toPay !== null && toPay > 0) words.push(texts.toPay(money(toPay, project)));
  if (clothPerBag !== null && clothPerBag > 0) words.push(texts.clothOfBag(money(clothPerBag, project)));
  if (costPerBag !== null && pricePerBag !== null && markup !== null && margin !== null)
    words.push(
      texts.price(money(costPerBag, project), money(pricePerBag, project), percent(markup), percent(margin)),
    );
  return words;
}

function percent(share: number): string {
  return `${Number((100 * share).toFixed(1))} %`;
}

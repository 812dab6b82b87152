import { type BagCost, bagCost } from "../../core/buying/bagCost.ts";
import type { Project } from "../../core/project/project.ts";
import { money } from "../../export/cutsheet/layWords.ts";
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
export function costWords(laid: readonly LaidCloth[], project: Project): string[] {
  const { toPay, clothPerBag, costPerBag, pricePerBag, markup, margin } = costOf(laid, project);
  const words: string[] = [];
  if (toPay !== null && toPay > 0) words.push(`To pay for cloth: ${money(toPay, project)}.`);
  if (clothPerBag !== null && clothPerBag > 0)
    words.push(`Cloth of one bag, your own at the same price: ${money(clothPerBag, project)}.`);
  if (costPerBag !== null && pricePerBag !== null && markup !== null && margin !== null)
    words.push(
      `One bag costs ${money(costPerBag, project)} with work, and sells at ${money(pricePerBag, project)}: ${percent(markup)} put on top, ${percent(margin)} of the price left.`,
    );
  return words;
}

function percent(share: number): string {
  return `${Number((100 * share).toFixed(1))} %`;
}

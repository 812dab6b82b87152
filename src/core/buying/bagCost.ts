import type { Pricing } from "../project/project.ts";
import { priceByMargin, priceByMarkup } from "./pricing.ts";
import type { Purchase } from "./purchase.ts";

/** What the bags of a project cost. Null where a material has no price: nothing is made up. */
export interface BagCost {
  /** To be paid in the shop for all bags. */
  readonly toPay: number | null;
  /** Cloth of one bag: what is paid and what own stock used up is worth, by the number of bags. */
  readonly clothPerBag: number | null;
  /** Cloth and work of one bag; null without pricing in the project too. */
  readonly costPerBag: number | null;
  /** Selling price of one bag. */
  readonly pricePerBag: number | null;
  /** The same price said both ways, so that mark-up and margin are not mixed up. */
  readonly markup: number | null;
  readonly margin: number | null;
}

/** Cost of one bag from what its cloth takes, and its price from the cost. */
export function bagCost(purchases: readonly Purchase[], bags: number, pricing: Pricing | undefined): BagCost {
  const toPay = sumOf(purchases.map((purchase) => purchase.toPay));
  const own = sumOf(purchases.map((purchase) => purchase.ownWorth));
  const clothPerBag = toPay === null || own === null ? null : (toPay + own) / bags;
  if (clothPerBag === null || pricing === undefined)
    return { toPay, clothPerBag, costPerBag: null, pricePerBag: null, markup: null, margin: null };
  const costPerBag = clothPerBag + pricing.workPerBag;
  const byMarkup = pricing.by === "markup";
  const pricePerBag = byMarkup
    ? priceByMarkup(costPerBag, pricing.share)
    : priceByMargin(costPerBag, pricing.share);
  return {
    toPay,
    clothPerBag,
    costPerBag,
    pricePerBag,
    markup: byMarkup ? pricing.share : pricing.share / (1 - pricing.share),
    margin: byMarkup ? pricing.share / (1 + pricing.share) : pricing.share,
  };
}

function sumOf(amounts: readonly (number | null)[]): number | null {
  return amounts.reduce<number | null>((sum, amount) => (sum === null || amount === null ? null : sum + amount), 0);
}

import { z } from "zod";
import { PRICED_BY, type Pricing, type SalesTax, type Supply } from "../project.ts";
import {
  countField,
  group,
  idField,
  moneyField,
  named,
  nameField,
  plainNumber,
  report,
  shareField,
  yesNo,
} from "./fields.ts";

const MOST_MARGIN = 0.95;

/** How a price is made of what a bag costs. */
export function pricingField(): z.ZodType<Pricing> {
  return group({
    workPerBag: moneyField().default(0),
    minutesPerBag: plainNumber(0, 100_000).optional(),
    hourlyRate: moneyField().optional(),
    overheadShare: shareField(0, 10).optional(),
    overheadPerBag: moneyField().optional(),
    by: z.enum(PRICED_BY),
    share: shareField(0, 10),
  }).transform((pricing, context): Pricing => {
    // A price of which everything is left has no end.
    if (pricing.by === "margin" && pricing.share > MOST_MARGIN)
      report(
        context,
        { code: "share-out-of-range", share: pricing.share, min: 0, max: MOST_MARGIN, isNumber: false },
        ["share"],
      );
    return pricing;
  });
}

/** The tax on what is bought and sold. */
export function taxField(): z.ZodType<SalesTax> {
  return named(
    "tax",
    "The tax on what is bought and sold.",
    group({ rate: shareField(0, 1), inPrices: yesNo().default(true), onBags: yesNo().default(false) }),
  );
}

/** What goes into every bag besides cloth. */
export function supplyField(): z.ZodType<Supply> {
  return named(
    "supply",
    "Something that goes into every bag besides cloth.",
    group({
      id: idField(),
      name: nameField().optional(),
      perBag: plainNumber(0, 10_000).default(1),
      price: moneyField().optional(),
      pack: countField(1, 1_000_000).default(1),
    }),
  ).transform(
    ({ name, price, ...supply }): Supply => ({ ...supply, name: name ?? supply.id, price: price ?? null }),
  );
}

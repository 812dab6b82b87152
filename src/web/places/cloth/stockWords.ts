import type { Material } from "../../../core/materials/material.ts";
import type { LengthWords } from "../../fields/units.ts";
import type { Texts } from "../../texts/catalogue.ts";

/** What there is of a material, in a few words. */
export function stockWords({ stock }: Material, lengths: LengthWords, texts: Texts): string {
  const rolls = stock.filter((each) => each.kind === "roll");
  const leftovers = stock.reduce((sum, each) => sum + (each.kind === "roll" ? 0 : each.count), 0);
  const widths = [...new Set(rolls.map((roll) => lengths.size(roll.width)))];
  return [
    ...(widths.length > 0 ? [texts.cloth.rollsWide(rolls.length, widths.join(", "))] : []),
    ...(leftovers > 0 ? [texts.cloth.leftovers(leftovers)] : []),
    ...(stock.length === 0 ? [texts.cloth.nothing] : []),
  ].join(" · ");
}

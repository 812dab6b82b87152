import type { Material } from "../../../core/materials/material.ts";
import type { LengthWords } from "../../fields/units.ts";
import type { Texts } from "../../texts/catalogue.ts";

/** What there is of a material, in a few words. */
export function stockWords({ stock }: Material, lengths: LengthWords, texts: Texts): string {
  const rolls = stock.filter((each) => each.kind === "roll");
  const count = (keptBack: boolean) =>
    stock.reduce((sum, each) => sum + (each.kind !== "roll" && !!each.keptBack === keptBack ? each.count : 0), 0);
  const [leftovers, keptBack] = [count(false), count(true)];
  const widths = [...new Set(rolls.map((roll) => lengths.size(roll.width)))];
  return [
    ...(widths.length > 0 ? [texts.cloth.rollsWide(rolls.length, widths.join(", "))] : []),
    ...(leftovers > 0 ? [texts.cloth.leftovers(leftovers)] : []),
    ...(keptBack > 0 ? [texts.cloth.keptBackShort(keptBack)] : []),
    ...(stock.length === 0 ? [texts.cloth.nothing] : []),
  ].join(" · ");
}

import type { Price } from "../materials/material.ts";
import { formatLength } from "../units/formatLength.ts";
import { MM_PER_UNIT } from "../units/length.ts";

/** A length as it is asked for in the shop: yards to an eighth where the price is by inches, feet or yards, else metres. */
export function shopLength(mm: number, price: Price | null): string {
  return formatLength(mm, price !== null && isImperial(price) ? "yd/8" : "m");
}

function isImperial({ basis }: Price): boolean {
  const inches = basis.kind === "length" ? basis.mm / MM_PER_UNIT.in : Number.NaN;
  return Math.abs(inches - Math.round(inches)) < 1e-9;
}

import type { Price } from "../materials/price.ts";
import { formatLength } from "../units/formatLength.ts";
import type { Language } from "../units/language.ts";
import { MM_PER_UNIT } from "../units/lengthWords.ts";

/** What a shop cuts by where it names no step, mm: a centimetre, an eighth of a yard (common practice, no source). */
const SHOP_STEP = { m: 10, "yd/8": MM_PER_UNIT.yd / 8 };
/** A length this near to a step is that step, mm. */
const SAME = 1e-6;

/**
 * A length as it is asked for in the shop: yards to an eighth where the price is by inches, feet or yards, else metres.
 * Rounded up to whole centimetres or eighths: less would be too short.
 */
export function shopLength(mm: number, price: Price | null, language: Language): string {
  const style = price !== null && isImperial(price) ? "yd/8" : "m";
  const step = SHOP_STEP[style];
  return formatLength(Math.ceil(mm / step - SAME) * step, style, language);
}

function isImperial({ basis }: Price): boolean {
  const inches = basis.kind === "length" ? basis.mm / MM_PER_UNIT.in : Number.NaN;
  return Math.abs(inches - Math.round(inches)) < 1e-9;
}

/** A width as shops say it: in inches where it is whole inches and no whole centimetres. */
export function shopWidth(mm: number, language: Language): string {
  const inches = mm / MM_PER_UNIT.in;
  const isInches = Math.abs(inches - Math.round(inches)) < 1e-6 && Math.abs(mm / 10 - Math.round(mm / 10)) > 1e-6;
  return formatLength(mm, isInches ? "in/16" : "cm", language);
}

import { minorDigits } from "../../core/buying/money.ts";
import type { Language } from "../../core/units/language.ts";

/**
 * An amount in the smallest coin as the language writes it: `€1,234.50`, in German `1.234,50 €`. What is no currency
 * code of three letters stands behind the number as the maker wrote it.
 */
export function moneyText(minor: number, currency: string, language: Language): string {
  const digits = minorDigits(currency);
  return written(minor / 10 ** digits, currency, language, [digits, digits]);
}

/** Digits after the point that prices of small things may have. */
const FINEST = 4;

/**
 * A price as the language writes it, to the last digit that it was given with and the currency's digits at least;
 * `bare`: the number alone.
 */
export function priceText(amount: number, currency: string, language: Language, bare = false): string {
  const digits = minorDigits(currency);
  return written(amount, bare ? "" : currency, language, [digits, Math.max(digits, FINEST)]);
}

function written(
  amount: number,
  currency: string,
  language: Language,
  [minimumFractionDigits, maximumFractionDigits]: readonly [least: number, most: number],
): string {
  const fraction = { minimumFractionDigits, maximumFractionDigits };
  const code = currency.trim();
  if (/^[a-z]{3}$/iu.test(code))
    return new Intl.NumberFormat(language, { style: "currency", currency: code, ...fraction }).format(amount);
  return `${new Intl.NumberFormat(language, fraction).format(amount)} ${currency}`.trim();
}

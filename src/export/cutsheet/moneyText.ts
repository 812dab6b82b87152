import { minorDigits } from "../../core/buying/money.ts";
import type { Language } from "../../core/units/language.ts";

/**
 * An amount in the smallest coin as the language writes it: `€1,234.50`, in German `1.234,50 €`. What is no currency
 * code of three letters stands behind the number as the maker wrote it.
 */
export function moneyText(minor: number, currency: string, language: Language): string {
  const digits = minorDigits(currency);
  const fraction = { minimumFractionDigits: digits, maximumFractionDigits: digits };
  const amount = minor / 10 ** digits;
  if (/^[a-z]{3}$/iu.test(currency.trim()))
    return new Intl.NumberFormat(language, {
      style: "currency",
      currency: currency.trim(),
      ...fraction,
    }).format(amount);
  return `${new Intl.NumberFormat(language, fraction).format(amount)} ${currency}`.trim();
}

/**
 * Digits after the point that a currency has, where they are not two. ISO 4217 minor units, from memory; the test holds
 * them against the tables of the machine.
 */
const MINOR_DIGITS: Readonly<Record<string, number>> = {
  ...{ BIF: 0, CLP: 0, DJF: 0, GNF: 0, ISK: 0, JPY: 0, KMF: 0, KRW: 0, PYG: 0, RWF: 0, UGX: 0, VND: 0, VUV: 0 },
  ...{ XAF: 0, XOF: 0, XPF: 0, BHD: 3, JOD: 3, KWD: 3, OMR: 3, TND: 3 },
};

/** Digits after the point of a currency by its ISO 4217 code; two for whatever else a maker writes. */
export function minorDigits(currency: string): number {
  return MINOR_DIGITS[currency.trim().toUpperCase()] ?? 2;
}

/** What rounding in the arithmetic may take off an amount in minor units: 5.555 is half a cent, not just under. */
const ROUNDING = 1e-7;

/**
 * An amount as a whole number of the currency's smallest coin, half a coin up. Sums and differences of such numbers are
 * exact. RangeError when the amount is not finite or too large to be exact.
 */
export function toMinor(amount: number, currency: string): number {
  const minor = Math.floor(amount * 10 ** minorDigits(currency) + 0.5 + ROUNDING);
  if (!Number.isSafeInteger(minor)) throw new RangeError(`toMinor: an amount of money was expected, got ${amount}`);
  return minor;
}

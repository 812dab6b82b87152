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

/** Parts of a millimetre, a coin's worth or a share that quantities and prices are counted in before they are multiplied. */
const PARTS = 1e6;

/** A number in whole millionths. RangeError when it is not finite or too large to be exact. */
function millionths(value: number, what: string): bigint {
  const parts = Math.round(value * PARTS);
  if (!Number.isSafeInteger(parts)) throw new RangeError(`${what}: a number up to 9e9 was expected, got ${value}`);
  return BigInt(parts);
}

/** A quotient, not negative, as a whole number, half up. */
function halfUp(top: bigint, bottom: bigint, what: string): number {
  const whole = Number((2n * top + bottom) / (2n * bottom));
  if (!Number.isSafeInteger(whole)) throw new RangeError(`${what}: more money than can be counted exactly`);
  return whole;
}

/**
 * What a quantity costs at `amount` for each `per` of it, in the currency's smallest coin, half a coin up. Whole numbers
 * all the way: amount, quantity and `per` are taken to a millionth, and nothing is rounded but the result.
 */
export function amountFor(amount: number, quantity: number, per: number, currency: string): number {
  const top =
    millionths(amount, "amountFor") * millionths(quantity, "amountFor") * 10n ** BigInt(minorDigits(currency));
  return halfUp(top, millionths(per, "amountFor") * BigInt(PARTS), "amountFor");
}

/** A share of an amount in the smallest coin, half a coin up; the share is taken to a millionth. */
export function shareOf(minor: number, share: number): number {
  return halfUp(BigInt(minor) * millionths(share, "shareOf"), BigInt(PARTS), "shareOf");
}

/** `minor` × `top` ÷ `bottom` in the smallest coin, half a coin up; `top` and `bottom` are taken to a millionth. */
export function partOf(minor: number, top: number, bottom: number): number {
  return halfUp(BigInt(minor) * millionths(top, "partOf"), millionths(bottom, "partOf"), "partOf");
}

/** A whole number of coins as an amount of the currency: 1390 is 13.9. For files; sums are made before. */
export function majorOf(minor: number, currency: string): number {
  return minor / 10 ** minorDigits(currency);
}

/**
 * An amount parted by weights into whole coins that add up to it: the coins that are left over go to the largest
 * remainders, the first of equal ones. Without any weight every part is 0 but the first. Source: largest remainder method.
 */
export function parted(minor: number, weights: readonly number[]): number[] {
  const parts = weights.map((weight) => millionths(weight, "parted"));
  const all = parts.reduce((sum, part) => sum + part, 0n);
  if (all === 0n) return parts.map((_, i) => (i === 0 ? minor : 0));
  const whole = parts.map((part) => (BigInt(minor) * part) / all);
  const rest = parts.map((part, i) => ({ i, rest: BigInt(minor) * part - whole[i]! * all }));
  const left = Number(BigInt(minor) - whole.reduce((sum, part) => sum + part, 0n));
  const more = new Set(
    rest
      .sort((a, b) => (a.rest === b.rest ? a.i - b.i : a.rest < b.rest ? 1 : -1))
      .slice(0, left)
      .map(({ i }) => i),
  );
  return whole.map((part, i) => Number(part) + (more.has(i) ? 1 : 0));
}

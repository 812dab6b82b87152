/** A whole-number quotient; kept exact while a length is put together. `den` is positive. */
export interface Rational {
  readonly num: bigint;
  readonly den: bigint;
}

/** The decimal text `digits` or `digits.digits` as an exact quotient. */
export function decimalRational(text: string): Rational {
  const [whole = "", part = ""] = text.split(".");
  return { num: BigInt(`${whole}${part}` || "0"), den: 10n ** BigInt(part.length) };
}

/** Sum, not reduced. */
export function addRational(a: Rational, b: Rational): Rational {
  return { num: a.num * b.den + b.num * a.den, den: a.den * b.den };
}

/** Product, not reduced. */
export function timesRational(a: Rational, b: Rational): Rational {
  return { num: a.num * b.num, den: a.den * b.den };
}

/** Digits kept before the one rounding to a double; twice what a double holds, so that it rounds as the exact value. */
const DIGITS = 34;

/** Whole numbers up to this are held exactly by a double. */
const EXACT = 2n ** 53n;

/** The double nearest to the quotient: one rounding, at the end. */
export function rationalToNumber(value: Rational): number {
  // One division of two exact numbers rounds once.
  if (value.num <= EXACT && value.den <= EXACT) return Number(value.num) / Number(value.den);
  const exponent = DIGITS - value.num.toString().length + value.den.toString().length;
  const scaled = exponent >= 0 ? value.num * 10n ** BigInt(exponent) : value.num / 10n ** BigInt(-exponent);
  return Number(`${scaled / value.den}e${-exponent}`);
}

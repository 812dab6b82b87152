/** Up to this share of a step too much is rounding in the arithmetic, not cloth. */
const ROUNDING = 1e-9;

/** Least whole number of steps that gives `amount`; the amount itself when any amount is cut (step 0). */
export function roundUpTo(amount: number, step: number): number {
  return step > 0 ? Math.ceil(amount / step - ROUNDING) * step : amount;
}

/** Selling price when `share` of the cost is added: 112.50 at 50 % is 168.75. */
export function priceByMarkup(cost: number, share: number): number {
  return cost * (1 + share);
}

/**
 * Selling price of which `share` is left after the cost: 112.50 at 50 % is 225. Not the same as a mark-up.
 * RangeError unless 0 ≤ share < 1.
 */
export function priceByMargin(cost: number, share: number): number {
  if (!(share >= 0 && share < 1))
    throw new RangeError(`priceByMargin: a share from 0 to under 1 was expected, got ${share}`);
  return cost / (1 - share);
}

/**
 * Length of cloth one piece takes when a pattern that repeats has to start alike on every piece: the piece rounded up
 * to whole repeats (straight match). mm.
 */
export function matchedLength(length: number, repeat: number): number {
  return roundUpTo(length, repeat);
}

/** Up to this share of a step too much is rounding in the arithmetic, not cloth. */
const ROUNDING = 1e-9;

/** Least whole number of steps that gives `amount`; the amount itself when any amount is cut (step 0). */
export function roundUpTo(amount: number, step: number): number {
  return step > 0 ? Math.ceil(amount / step - ROUNDING) * step : amount;
}

/**
 * Length of cloth one piece takes when a pattern that repeats has to start alike on every piece: the piece rounded up
 * to whole repeats (straight match). mm.
 */
export function matchedLength(length: number, repeat: number): number {
  return roundUpTo(length, repeat);
}

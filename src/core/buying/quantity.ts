import type { Price } from "../materials/price.ts";
import { amountFor } from "./money.ts";

/** How much is bought, and what it costs in the smallest coin. mm or mm², as the price is asked. */
export interface Bought {
  readonly quantity: number;
  readonly cost: number;
}

/** What so much costs, at the price from that quantity on. */
export function costAt(price: Price, quantity: number, currency: string): number {
  const { amount, basis, steps = [] } = price;
  if (basis.kind === "each") return amountFor(amount, 1, 1, currency);
  // The last step that is reached, wherever it stands in the list.
  const reached = steps
    .filter(({ from }) => from <= quantity + SAME)
    .reduce<{ from: number; amount: number } | null>(
      (far, step) => (far && far.from >= step.from ? far : step),
      null,
    );
  return amountFor(reached?.amount ?? amount, quantity, basis.kind === "length" ? basis.mm : basis.mm2, currency);
}

/** A quantity this near to a price step has reached it. */
const SAME = 1e-6;

/**
 * How much to ask for in the shop when so much is needed: up to the least that is sold, in whole steps; more than that
 * where the price falls so far that more costs less. Of what costs the same the least.
 */
export function bought(price: Price, needed: number, currency: string): Bought {
  const { basis, step, least = 0, steps = [] } = price;
  if (basis.kind === "each") return { quantity: needed, cost: costAt(price, needed, currency) };
  const enough = roundUpTo(Math.max(needed, least), step);
  const more = steps.map(({ from }) => roundUpTo(from, step)).filter((from) => from > enough + SAME);
  return [enough, ...more]
    .sort((a, b) => a - b)
    .map((quantity) => ({ quantity, cost: costAt(price, quantity, currency) }))
    .reduce((best, one) => (one.cost < best.cost ? one : best));
}

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

import { lengthsForStraps } from "./lengthForStraps.ts";
import type { StrapOnCloth } from "./strapProblem.ts";
import { strapYield } from "./strapYield.ts";

/** From this length of cloth on, so many straps. */
export interface YieldStep {
  /** mm. */
  readonly length: number;
  readonly count: number;
  /** No shorter length gives as many. */
  readonly proven: boolean;
}

/** Fills tried for one point of a curve; an answer on its own gets ten times as many. */
const TRIES_A_POINT = 3e5;
/** More steps than this are drawn no finer: the curve ends there. */
const MOST_STEPS = 200;
/** Two lengths nearer than this are one, mm. */
const SAME = 1e-6;

/**
 * How the number of straps grows with the length of cloth, from `from` to `to` mm: the first step is what `from`
 * gives, each further one the shortest length found that gives more. Ends after 200 steps.
 *
 * Errors: as `strapYield`.
 * Cost:   some tens of small yields a step; a second for a curve of tens of steps.
 */
export function yieldCurve(cloth: StrapOnCloth, from: number, to: number): readonly YieldStep[] {
  const first = strapYield(cloth, from, TRIES_A_POINT);
  const steps: YieldStep[] = [{ length: from, count: first.count, proven: first.proven }];
  while (steps.length <= MOST_STEPS) {
    const last = steps.at(-1)!;
    const next = nextStep(cloth, last);
    if (next === null || next.length > to + SAME) break;
    steps.push(next);
  }
  return steps;
}

/** The shortest longer cloth that gives more than a step does; null when no length gives any. */
export function nextStep(
  cloth: StrapOnCloth,
  { length, count }: Pick<YieldStep, "length" | "count">,
): YieldStep | null {
  let best: YieldStep | null = null;
  for (const found of lengthsForStraps(cloth, count + 1, TRIES_A_POINT))
    best = { length: found.length, count: found.plan.count, proven: found.proven };
  // A search by fewer tries may find on the same length what the one before did not.
  if (best === null || best.length > length + SAME) return best;
  return best.count > count ? { ...best, length } : null;
}

/** What is lost of cloth between the shop and the cutting table. */
export interface ClothLoss {
  /** Cut off each cut end to square it, mm. */
  readonly squaring: number;
  /** Shares lost in a wash before cutting, 0 … 0.3. */
  readonly lengthwise: number;
  readonly crosswise: number;
}

/** What is left to cut from of a length as bought: both ends squared, then washed. 0 when nothing is left. mm. */
export function lengthToCut(bought: number, { squaring, lengthwise }: ClothLoss): number {
  return Math.max(0, bought - 2 * squaring) * (1 - lengthwise);
}

/** What has to be bought for a length to cut from; the other way round. mm. */
export function lengthToBuy(cut: number, { squaring, lengthwise }: ClothLoss): number {
  return cut / (1 - lengthwise) + 2 * squaring;
}

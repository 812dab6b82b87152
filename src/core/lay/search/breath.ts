import type { SearchStep } from "./engine.ts";

/**
 * Yielded inside a turn, so that a host may stop there: nothing is told or heard at it, and nobody counts it as a
 * turn. So breaths can be put anywhere without any plan changing.
 */
export const BREATH = "breath";

export type Breath = typeof BREATH;

/** What the stages of a search yield: a pause, of which some make a turn, or a breath. */
export type Pause = undefined | Breath;

/** A breath as a step of a search that told of `evaluations` last. */
export function breathStep(evaluations: number): SearchStep {
  return { evaluations, plan: null, bound: null, isBreath: true };
}

/** The result of steps taken in one go. */
export function inOneGo<T>(steps: Generator<unknown, T, undefined>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/**
 * Yielded by any search of the lay, and by any stage of one, inside a turn: a host may stop there, nothing is told or
 * heard at it, and nobody counts it as a turn. So breaths can be put anywhere without any plan changing.
 */
export const BREATH = "breath";

export type Breath = typeof BREATH;

/** What the stages of a search yield: a pause, of which some make a turn, or a breath. */
export type Pause = undefined | Breath;

/** The result of steps taken in one go. */
export function inOneGo<T>(steps: Generator<unknown, T, undefined>): T {
  const quiet = inSteps(steps);
  for (let step = quiet.next(); ; step = quiet.next()) if (step.done) return step.value;
}

/** The result of steps, with a pause after each that says nothing. */
export function* inSteps<T>(steps: Generator<unknown, T, undefined>): Generator<void, T, undefined> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield;
  }
}

/** What a search comes to next, breaths passed on: a turn, or its end. `told` is what it is to hear of. */
export function* nextTurn<Turn, Plan, Told>(
  search: Generator<Turn | Breath, Plan, Told | undefined>,
  told?: Told,
): Generator<Breath, IteratorResult<Turn, Plan>, unknown> {
  for (let step = told === undefined ? search.next() : search.next(told); ; step = search.next()) {
    if (step.done) return step;
    if (step.value !== BREATH) return { done: false, value: step.value as Turn };
    yield BREATH;
  }
}

import type { SearchTables } from "../problem/rectangles/searchTables.ts";
import { type Breath, nextTurn } from "../search/breath.ts";
import type { BoundHolder } from "./quickBound.ts";
import type { ReachableLengths } from "./reachableLengths.ts";
import { isSweepable, type SweepVerdict, sweepProof } from "./sweepProof.ts";

/** States of the first sweeps; more after every round, up to the most. */
const FIRST_STATES = 12_000;
const GROWTH = 4;
const MOST_STATES = 400_000;

/**
 * Sweeps in turns: first the length just short of the best plan, which would prove it, then lengths from the bound
 * upwards, with more states round by round. Raises `bound`. Each call works for about `looks` and yields what it
 * has spent.
 */
export function sweepTurns(
  tables: SearchTables,
  reachable: ReachableLengths,
  bound: BoundHolder,
  best: () => number,
): (looks: number) => Generator<number | Breath, void, void> {
  let proving: { readonly length: number; readonly work: Generator<number | Breath, SweepVerdict, void> } | null =
    null;
  let states = FIRST_STATES;
  /** Lengths that the relaxation allows, and those that were too much for the states allowed now. */
  const open = new Set<number>();
  const tooMuch = new Set<number>();
  const worthTrying = isSweepable(tables, best());

  const nextLength = (): number | null => {
    const candidates = [reachable.atMost(best() - 1), bound.value];
    for (;;) {
      const length = candidates.find((one) => one >= bound.value && !open.has(one) && !tooMuch.has(one));
      if (length !== undefined) return length;
      if (tooMuch.size === 0 || states >= MOST_STATES) return null;
      tooMuch.clear();
      states = Math.min(MOST_STATES, states * GROWTH);
    }
  };

  return function* turn(looks) {
    if (!worthTrying) return;
    for (let left = looks; left > 0 && best() > bound.value; ) {
      if (proving === null || proving.length >= best()) {
        const length = nextLength();
        if (length === null) return;
        proving = { length, work: sweepProof(tables, length, states) };
      }
      const { length, work } = proving;
      const step = yield* nextTurn(work);
      if (!step.done) {
        left -= step.value;
        yield step.value;
        continue;
      }
      proving = null;
      if (step.value === "impossible") bound.value = Math.max(bound.value, reachable.atLeast(length + 1));
      else if (step.value === "open") open.add(length);
      else tooMuch.add(length);
    }
  };
}

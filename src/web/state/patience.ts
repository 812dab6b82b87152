import type { LayProblem } from "../../core/lay/problem/layProblem.ts";
import type { LayState } from "./layBoard.ts";

/**
 * After so many placements tried without a better plan a search rests, or after as many again as it took to find the
 * plan. Effort first, then time: a slow machine looks as far as a fast one. What is not looked at has a short first turn; once
 * every cloth has had one, each gets the long one.
 */
export const PATIENCE = { first: 600_000, whole: 12_000_000 };

/**
 * … and not before it has looked for so long since then, for every corner of all pieces and at most, ms: placements of
 * boxes are tried by the ten million a second, and say nothing of what many corners may still come to.
 */
const LOOK = { perCorner: 10, most: 25_000 };

/** Whether so much was tried since the last better plan. */
export function isTried(
  { evaluations, betterAt }: Pick<LayState, "evaluations" | "betterAt">,
  patience: number,
): boolean {
  return evaluations - betterAt >= Math.max(patience, patience === PATIENCE.whole ? betterAt : 0);
}

/** How long a search looks at least before it rests, ms. */
export function leastLook({ pieces }: LayProblem): number {
  const corners = pieces.reduce((sum, { outline, count }) => sum + (count * outline.outer.length) / 2, 0);
  return Math.min(LOOK.most, LOOK.perCorner * corners);
}

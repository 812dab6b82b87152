import { outlineEngine } from "../../core/lay/outlines/outlineEngine.ts";
import type { LayProblem } from "../../core/lay/problem/layProblem.ts";
import { arrange } from "../../core/lay/search/arrange/arrange.ts";
import { BREATH } from "../../core/lay/search/breath.ts";

/**
 * Evaluations a second of processor time of the outline engine alone, one thread, in the second half of `seconds` of
 * processor time after its first plan: by then most no-fit polygons are there. NaN when the search ends before that.
 */
export function outlineRate(problem: LayProblem, seed: number, seconds: number): number {
  let planned: number | null = null;
  let half: { readonly at: number; readonly evaluations: number } | null = null;
  for (const turn of arrange(problem, () => [outlineEngine], { evaluations: Infinity }, seed)) {
    if (turn === BREATH) continue;
    const { plan, evaluations } = turn;
    const now = processorTime();
    if (plan !== null) planned ??= now;
    if (planned === null || now < planned + seconds / 2) continue;
    half ??= { at: now, evaluations };
    if (now >= planned + seconds) return (evaluations - half.evaluations) / (now - half.at);
  }
  return Number.NaN;
}

/** Processor time of the process so far, s. */
function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

import { polygonArea } from "../../geometry/ring.ts";
import { chooseEngines } from "../../lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem, Stock } from "../../lay/problem/layProblem.ts";
import { arrange } from "../../lay/search/arrange/arrange.ts";
import { BREATH, type Breath, nextTurn } from "../../lay/search/breath.ts";
import type { CutMode } from "../../lay/search/engine.ts";

/** How long and how a quick plan is looked for. */
export interface QuickSearch {
  readonly mode: CutMode;
  readonly evaluations: number;
  readonly seed: number;
}

/**
 * The best plan within so many evaluations. Where pieces are left out that may have a place on cloth that does not go on,
 * the search is let go on to its end: what it fills stock by stock is whole only then.
 */
export function* quickPlan(
  problem: LayProblem,
  { evaluations, mode, seed }: QuickSearch,
): Generator<Breath, LayPlan, undefined> {
  const search = arrange(problem, (job) => chooseEngines(job, mode), { evaluations }, seed);
  const mayTakeAll = stocksMayTakeAll(problem);
  let best: LayPlan | null = null;
  for (;;) {
    const step: IteratorResult<{ evaluations: number; plan: LayPlan | null }, LayPlan> = yield* nextTurn(search);
    if (step.done) return step.value;
    best = step.value.plan ?? best;
    const isSpent = best !== null && step.value.evaluations >= evaluations;
    if (isSpent && (best!.unplaced.length === 0 || !mayTakeAll)) return best!;
    yield BREATH;
  }
}

/** Whether there is cloth enough for the pieces' area. */
function stocksMayTakeAll({ pieces, stocks }: LayProblem): boolean {
  const needed = pieces.reduce((sum, { outline, count }) => sum + count * polygonArea(outline), 0);
  const areaOf = (stock: Stock): number =>
    stock.kind === "remnant" ? polygonArea(stock.outline) : stock.width * (stock.length ?? Infinity);
  return needed <= stocks.reduce((sum, stock) => sum + areaOf(stock), 0);
}

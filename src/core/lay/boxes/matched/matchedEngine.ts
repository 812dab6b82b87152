import { isMatched } from "../../problem/lattice.ts";
import { isRectangleJob, mayLieAslant } from "../../problem/rectangles/prepare.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { nextTurn } from "../../search/breath.ts";
import { isBetterRegionPlan } from "../../search/comparePlans.ts";
import type { Engine, Search } from "../../search/engine.ts";
import { freeAxes } from "../../search/phases/phaseChoices.ts";
import { racePhases } from "../../search/phases/searchPhases.ts";
import { raceEngines } from "../../search/raceEngines.ts";
import { criticalAxes } from "./criticalPhases.ts";
import { everyOrder, MOST_BOXES } from "./everyOrder.ts";
import { leftmostRule } from "./layInOrder.ts";
import { type LaidBox, matchedJobOf, matchedPlan } from "./matchedJob.ts";
import { matchedCutsEngine } from "./matchedRulerEngine.ts";
import { boundOf, ordersEngine } from "./ordersEngine.ts";

/**
 * Rectangles of which some are held to the cloth's pattern. Of few boxes every order is tried, with every phase where
 * the maker leaves it free; of more, orders improved by small changes, each box laid leftmost on its rungs. Its bound is
 * that of the boxes without the pattern.
 */
export const matchedEngine: Engine = {
  id: "matched-rectangles",
  choosesPhases: true,
  accepts: isMatchedBoxJob,
  *search(job, budget, seed): Search {
    const prepared = matchedJobOf(job);
    const boxes = prepared.kinds.reduce((sum, { copies }) => sum + copies.length, 0);
    const fits = prepared.kinds.every(({ ways }) => ways.length > 0);
    const isSmall =
      boxes > 0 && boxes <= MOST_BOXES && fits && job.goal === "shortest" && prepared.blocked.length === 0;
    const axes = freeAxes(job);
    const first = isSmall ? FIRST_LOOK : budget.evaluations;
    const searchOrders = (evaluations: number): Search =>
      axes.length > 0
        ? racePhases(orderEngines, job, { evaluations }, seed)
        : raceEngines(orderEngines(job), job, { evaluations }, seed);
    let best: RegionPlan = yield* searchOrders(Math.min(first, budget.evaluations));
    if (!isSmall || first >= budget.evaluations) return best;
    const bound = boundOf(job);
    let evaluations = first;
    let fresh = false;
    const told = (_end: number, laid: readonly LaidBox[]): void => {
      best = matchedPlan(prepared, laid);
      fresh = true;
    };
    const search = everyOrder(
      prepared,
      criticalAxes(prepared, axes) ?? axes,
      best.length - job.margin + job.gap - SHORTER,
      told,
    );
    for (let turn = search.next(); ; turn = search.next()) {
      if (!turn.done) evaluations += turn.value;
      yield { evaluations, plan: fresh ? best : null, bound };
      fresh = false;
      if (evaluations >= budget.evaluations) return best;
      if (turn.done && turn.value) return best;
      if (turn.done) break;
    }
    // Too many orders after all: the search by small changes goes on.
    const rest = searchOrders(budget.evaluations - evaluations);
    for (let step = yield* nextTurn(rest); ; step = yield* nextTurn(rest)) {
      const { plan, spent } = step.done
        ? { plan: step.value, spent: 0 }
        : { plan: step.value.plan, spent: step.value.evaluations };
      const isNew: boolean = plan !== null && isBetterRegionPlan(job.pieces, plan, best);
      if (isNew) best = plan!;
      if (step.done) return best;
      yield { evaluations: evaluations + spent, plan: isNew ? best : null, bound };
    }
  },
};

/** Evaluations of the search by small changes before every order is tried, and how much shorter a plan has to be, mm. */
const FIRST_LOOK = 40_000;
const SHORTER = 1e-6;

/** Orders of boxes improved by small changes, laid leftmost, and laid for the ruler, which is often as short or shorter. */
function orderEngines(job: RegionJob): readonly Engine[] {
  return [leftmostEngine, matchedCutsEngine].filter((engine) => engine.accepts(job));
}

/** Every box in turn in the leftmost place on its rungs; all phases are known. */
const leftmostEngine = ordersEngine("matched-orders", isMatchedBoxJob, leftmostRule);

/** Boxes of which some are held to the pattern, and none may lie aslant. */
function isMatchedBoxJob(job: RegionJob): boolean {
  return isMatched(job) && isRectangleJob(job) && !mayLieAslant(job);
}

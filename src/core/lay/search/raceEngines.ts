import type { RegionJob, RegionPlan } from "../problem/region.ts";
import { nextTurn } from "./breath.ts";
import { isBetterRegionPlan } from "./comparePlans.ts";
import type { Engine, Search, SearchBudget } from "./engine.ts";

/** Turns of the engine that holds the best plan for each turn of another. */
const LEADER_TURNS = 3;
/** Rounds for each turn of an engine that is a start only and has been beaten. */
const REST_ROUNDS = 32;
/** An engine that gains nothing while another does rests a round more between its turns after so many rounds. */
const ROUNDS_PER_REST = 24;

interface Runner {
  readonly search: Search;
  readonly isStart: boolean;
  /** Whether it has had a turn: what a generator is told before that, nobody hears. */
  hasBegun: boolean;
  evaluations: number;
  /** Round in which it last had the best plan. */
  gained: number;
  /** A plan of another that this one has not been told of. */
  news: RegionPlan | undefined;
}

/**
 * Searches one region with several engines by turns, each told of the others' better plans; the one that holds the
 * best plan gets more turns, and one that is a start only hardly any once it is beaten. Turns are counted, not timed,
 * so the result depends on the arguments alone. Never worse than the best of them within its share of the budget.
 * Throws RangeError without an engine.
 */
export function* raceEngines(
  engines: readonly Engine[],
  job: RegionJob,
  budget: SearchBudget,
  seed: number,
): Search {
  if (engines.length === 0) throw new RangeError("raceEngines: expected at least one engine");
  if (engines.length === 1) return yield* engines[0]!.search(job, budget, seed);
  const runners = engines.map((engine): Runner => {
    const search = engine.search(job, budget, seed);
    const isStart = engine.isStart === true;
    return { search, isStart, hasBegun: false, evaluations: 0, gained: 0, news: undefined };
  });
  let running = runners;
  let best: RegionPlan | null = null;
  let bound: number | null = null;
  let leader: Runner | null = null;
  let now = 0;
  const spent = (): number => runners.reduce((sum, runner) => sum + runner.evaluations, 0);
  const take = (runner: Runner, plan: RegionPlan): boolean => {
    if (!isBetterRegionPlan(job.pieces, plan, best)) return false;
    best = plan;
    leader = runner;
    runner.gained = now;
    runner.news = undefined;
    for (const other of runners) if (other !== runner) other.news = plan;
    return true;
  };
  const hear = (told: RegionPlan): void => {
    if (!isBetterRegionPlan(job.pieces, told, best)) return;
    best = told;
    for (const other of runners) other.news = told;
    if (leader?.isStart) leader = null;
  };
  const turnsOf = (runner: Runner, round: number): number => {
    if (running.length === 1) return 1;
    if (runner.isStart) return runner === leader || round % REST_ROUNDS === 0 ? 1 : 0;
    if (runner === leader || leader?.isStart) return LEADER_TURNS;
    // What gains less gets less: rounds of rest grow with the time in which only the leader gained.
    const idle = leader === null ? 0 : Math.max(0, leader.gained - runner.gained);
    const rest = Math.min(REST_ROUNDS, 1 + Math.floor(idle / ROUNDS_PER_REST));
    return round % rest === 0 ? 1 : 0;
  };
  for (let round = 0; running.length > 0; round++) {
    now = round;
    for (const runner of running) {
      const turns = turnsOf(runner, round);
      for (let turn = 0; turn < turns; turn++) {
        const news = runner.hasBegun ? runner.news : undefined;
        if (runner.hasBegun) runner.news = undefined;
        runner.hasBegun = true;
        const { done, value } = yield* nextTurn(runner.search, news);
        if (done) {
          running = running.filter((other) => other !== runner);
          // A start that found a place for nothing says nothing of the job.
          const isEmpty = runner.isStart && value.placements.length === job.pinned.length;
          if (!isEmpty && take(runner, value)) yield { evaluations: spent(), plan: value, bound };
          break;
        }
        runner.evaluations = value.evaluations;
        if (value.bound !== null) bound = Math.max(bound ?? value.bound, value.bound);
        const improved = value.plan !== null && take(runner, value.plan);
        const told: RegionPlan | undefined = yield { evaluations: spent(), plan: improved ? best : null, bound };
        if (told) hear(told);
        // Without a plan an engine that has spent its budget is still to return what it has.
        if (best !== null && (spent() >= budget.evaluations || isProven(job, best, bound))) return best;
      }
    }
  }
  return best!;
}

/** True when the plan is complete and as short as the bound allows. */
function isProven(job: RegionJob, plan: RegionPlan, bound: number | null): boolean {
  if (job.goal !== "shortest" || bound === null) return false;
  return plan.left.every((count) => count === 0) && plan.length <= bound * (1 + 1e-12);
}

import { FREE_PHASE, freePhases } from "../../problem/lattice.ts";
import type { LayPhase } from "../../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { nextTurn } from "../breath.ts";
import { isBetterRegionPlan } from "../comparePlans.ts";
import type { Engine, Search, SearchBudget } from "../engine.ts";
import { raceEngines } from "../raceEngines.ts";
import { type Rng, seededRng } from "../rng.ts";
import { sparingStrips } from "../sparingStrips.ts";
import { type FreeAxis, freeAxes, phaseChoices } from "./phaseChoices.ts";

/** Evaluations each choice gets in the first round at least and at most; of so many choices one is kept each round. */
const LEAST_FIRST = 2_000;
const MOST_FIRST = 20_000;
/** Share of the budget for the first round. */
const FIRST_SHARE = 0.125;
const OF_WHICH_ONE = 4;
/** Share of the budget after which the best choice has all that is left: outlines take long to get shorter at all. */
const RACED_SHARE = 0.35;

/** Evaluations of a turn grow up to this. */
const LONGEST = 2_000_000;
/** How many of the best choices are changed, into how many new ones for all that ran, and draws until they are new. */
const BEST = 3;
const CHANGED_PART = 6;
const MOST_TRIES = 40;
/** A phase near another is one of so many next to it among those that can be chosen. */
const NEAR = 3;

type Phases = Readonly<Record<string, LayPhase>>;

interface Runner {
  readonly phases: Phases;
  readonly search: Search;
  evaluations: number;
  plan: RegionPlan | null;
  isDone: boolean;
}

/**
 * A race of engines on one region in which the phases of matched groups that are free are chosen besides: all choices
 * get a little effort, the best quarter of them and changes of the best four times as much, and so on; most of the budget
 * is the last one's. Where no phase is free it is the race alone. Bounds are those of the job without its pattern and hold for every phase.
 */
export function* searchPhases(
  engines: (job: RegionJob) => readonly Engine[],
  job: RegionJob,
  budget: SearchBudget,
  seed: number,
): Search {
  const heeds = (job.leastStrip ?? 0) > 0 && engines(job).some(({ heedsStrips }) => heedsStrips === true);
  const searchOf = (its: RegionJob, most: SearchBudget, own: number): Search =>
    searchAsTold(engines, its, most, own);
  return yield* heeds ? sparingStrips(searchOf, job, budget, seed) : searchOf(job, budget, seed);
}

function* searchAsTold(
  engines: (job: RegionJob) => readonly Engine[],
  job: RegionJob,
  budget: SearchBudget,
  seed: number,
): Search {
  if (freePhases(job.pieces, job.pattern, job.phases).length === 0)
    return yield* raceEngines(engines(job), job, budget, seed);
  const own = engines(job).find(({ choosesPhases }) => choosesPhases === true);
  return yield* own ? own.search(job, budget, seed) : racePhases(engines, job, budget, seed);
}

/** The same where the phases have to be chosen for the engines. */
export function* racePhases(
  engines: (job: RegionJob) => readonly Engine[],
  job: RegionJob,
  budget: SearchBudget,
  seed: number,
): Search {
  const rng = seededRng(seed);
  const axes = freeAxes(job);
  const known = new Set<string>();
  const runnerOf = (phases: Phases): Runner => {
    known.add(JSON.stringify(phases));
    const fixed = { ...job, phases };
    const search = raceEngines(engines(fixed), fixed, budget, seed);
    return { phases, search, evaluations: 0, plan: null, isDone: false };
  };
  let runners = phaseChoices(job).map(runnerOf);
  const share = (FIRST_SHARE * budget.evaluations) / runners.length;
  let slice = Math.min(MOST_FIRST, Math.max(LEAST_FIRST, Math.floor(share)));
  let best: RegionPlan | null = null;
  let bound: number | null = null;
  let gone = 0;
  const spent = (): number => runners.reduce((sum, { evaluations }) => sum + evaluations, gone);
  for (;;) {
    for (const runner of runners) {
      const until = runner.evaluations + slice;
      while (!runner.isDone && (runner.plan === null || runner.evaluations < until)) {
        const turn = yield* nextTurn(runner.search);
        const plan = turn.done ? turn.value : turn.value.plan;
        if (turn.done) runner.isDone = true;
        else {
          runner.evaluations = turn.value.evaluations;
          if (turn.value.bound !== null) bound = Math.max(bound ?? turn.value.bound, turn.value.bound);
        }
        if (plan !== null && isBetterRegionPlan(job.pieces, plan, runner.plan)) runner.plan = plan;
        const isNew: boolean = plan !== null && isBetterRegionPlan(job.pieces, plan, best);
        if (isNew) best = plan;
        const told: RegionPlan | undefined = yield { evaluations: spent(), plan: isNew ? best : null, bound };
        if (told && isBetterRegionPlan(job.pieces, told, best)) best = told;
        if (best !== null && (spent() >= budget.evaluations || isProven(job, best, bound))) return best;
      }
    }
    const ranked = [...runners].sort((a, b) => {
      if (isBetterRegionPlan(job.pieces, a.plan!, b.plan)) return -1;
      return isBetterRegionPlan(job.pieces, b.plan!, a.plan) ? 1 : 0;
    });
    const isLast = spent() >= RACED_SHARE * budget.evaluations && !ranked[0]!.isDone;
    const kept = ranked.slice(0, isLast ? 1 : Math.ceil(runners.length / OF_WHICH_ONE));
    const changed: Runner[] = [];
    for (
      let tries = 0;
      !isLast && tries < MOST_TRIES && changed.length < Math.max(1, runners.length / CHANGED_PART);
      tries++
    ) {
      const phases = changedPhases(kept[rng.below(Math.min(BEST, kept.length))]!.phases, axes, rng);
      if (!known.has(JSON.stringify(phases))) changed.push(runnerOf(phases));
    }
    if (changed.length === 0 && runners.every(({ isDone }) => isDone)) return best!;
    gone += ranked.slice(kept.length).reduce((sum, { evaluations }) => sum + evaluations, 0);
    runners = [...kept, ...changed];
    if (slice < LONGEST) slice *= OF_WHICH_ONE;
  }
}

/** Another phase for one axis of one group: one near the old in every second case, since good phases lie together. */
function changedPhases(phases: Phases, axes: readonly FreeAxis[], rng: Rng): Phases {
  const { group, axis, values } = axes[rng.below(axes.length)]!;
  const old = phases[group] ?? FREE_PHASE;
  const sorted = [...values].sort((a, b) => a - b);
  const at = old[axis] === null ? -1 : sorted.indexOf(old[axis]);
  const isNear = at >= 0 && rng.unit() < 0.5;
  const step = (1 + rng.below(NEAR)) * (rng.unit() < 0.5 ? 1 : -1);
  const next = isNear ? (at + step + NEAR * sorted.length) % sorted.length : rng.below(sorted.length);
  return { ...phases, [group]: { ...old, [axis]: sorted[next]! } };
}

function isProven(job: RegionJob, plan: RegionPlan, bound: number | null): boolean {
  if (job.goal !== "shortest" || bound === null) return false;
  return plan.left.every((count) => count === 0) && plan.length <= bound * (1 + 1e-12);
}

import { chooseEngines } from "../engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../problem/layProblem.ts";
import { arrange } from "../search/arrange/arrange.ts";
import type { ArrangeStep } from "../search/arrange/layingDesk.ts";
import { type Breath, nextTurn } from "../search/breath.ts";
import { areaLeftOut, type ChoiceFor } from "../search/comparePlans.ts";
import type { SearchBudget } from "../search/engine.ts";
import { CHOICE_MODES, type CutMode } from "../search/engine.ts";
import { type LayFigures, layFigures } from "./layFigures.ts";
import { type OffcutGoal, offcutSearch } from "./offcutSearch.ts";

/** One of the plans offered. */
export interface LayChoice {
  /** One plan may be the best for more than one thing. */
  readonly best: readonly ChoiceFor[];
  readonly plan: LayPlan;
  readonly figures: LayFigures;
  /** Cloth used beyond the shortest plan, mm: the price of what it is chosen for. */
  readonly extraLength: number;
}

/** One turn of the search; `choices` is set when they changed. */
export interface ChoiceStep {
  readonly evaluations: number;
  readonly choices: readonly LayChoice[] | null;
}

/** Cloth that an easier plan or a larger offcut may cost, as a share of the shortest plan. */
const MOST_EXTRA = 0.03;

interface Pooled {
  readonly plan: LayPlan;
  readonly figures: LayFigures;
  readonly areaLeft: number;
}

/**
 * Up to three plans of one problem from one pool: the shortest; the easiest to cut (edge to edge with the fewest
 * ruler settings, then cuts; up to 3 % longer, or as short as edge to edge can be); and the one that leaves the
 * largest rectangle for the cloth it uses. The pool holds every better plan of a free, a ruler and a few-stage
 * search and of a search for larger offcuts that share the effort. Yields at least every 20 ms; the result depends on
 * the arguments alone.
 */
export function* searchChoices(
  problem: LayProblem,
  budget: SearchBudget,
  seed: number,
): Generator<ChoiceStep | Breath, readonly LayChoice[], void> {
  const effort = budget.evaluations / (CHOICE_MODES.length + 1);
  const pool: Pooled[] = [];
  const width = widthOf(problem);
  const goal = (): OffcutGoal => offcutGoal(pool, width);
  const runners = CHOICE_MODES.map((mode) => runner(modeSearch(problem, mode, effort, seed)));
  const offcuts = runner(offcutSearch(problem, goal, effort, seed));
  let running = [...runners, offcuts];
  let done = 0;
  let choices: readonly LayChoice[] = [];
  while (running.length > 0) {
    const able = pool.length > 0 ? running : runners;
    const turn = able.reduce((least, one) => (one.spent < least.spent ? one : least));
    const step = yield* nextTurn(turn.search);
    const { plan } = step.value;
    turn.spent = step.value.evaluations;
    if (step.done) {
      running = running.filter((one) => one !== turn);
      done += turn.spent;
    }
    const isNew = plan !== null && !pool.some((pooled) => pooled.plan === plan);
    if (isNew) {
      pool.push(pooledPlan(problem, plan));
      choices = chosen(pool, width);
    }
    const evaluations = done + running.reduce((sum, { spent }) => sum + spent, 0);
    yield { evaluations, choices: isNew ? choices : null };
  }
  return choices;
}

/** One of the searches that share the effort. */
interface Runner {
  readonly search: Generator<ArrangeStep | Breath, ArrangeStep, undefined>;
  spent: number;
}

function runner(search: Runner["search"]): Runner {
  return { search, spent: 0 };
}

function* modeSearch(problem: LayProblem, mode: CutMode, effort: number, seed: number): Runner["search"] {
  const plan = yield* arrange(problem, (job) => chooseEngines(job, mode), { evaluations: effort }, seed);
  return { evaluations: plan.evaluations, plan };
}

/** Of the shortest plans of a pool the one that leaves most, and the best gain by an offcut. */
function offcutGoal(pool: readonly Pooled[], width: number): OffcutGoal {
  const whole = wholest(pool);
  const { plan, figures } = least(whole, (pooled) => [pooled.figures.length, -offcutArea(pooled.figures)]);
  const gains = whole.map(
    (pooled) => offcutArea(pooled.figures) - (pooled.figures.length - figures.length) * width,
  );
  return { plan, length: figures.length, gain: Math.max(...gains) };
}

/** The plans that leave out least. */
function wholest(pool: readonly Pooled[]): readonly Pooled[] {
  const leastLeft = Math.min(...pool.map((pooled) => pooled.areaLeft));
  return pool.filter((pooled) => pooled.areaLeft <= leastLeft * (1 + 1e-9));
}

function shortestOf(pool: readonly Pooled[]): Pooled {
  return least(pool, ({ figures }) => [figures.length, figures.ruler?.settings ?? Infinity, -offcutArea(figures)]);
}

/** The three choices out of plans that are there already; none out of none. */
export function choicesFrom(problem: LayProblem, plans: readonly LayPlan[]): readonly LayChoice[] {
  return plans.length === 0
    ? []
    : chosen(
        plans.map((plan) => pooledPlan(problem, plan)),
        widthOf(problem),
      );
}

function pooledPlan(problem: LayProblem, plan: LayPlan): Pooled {
  return { plan, figures: layFigures(problem, plan), areaLeft: areaLeftOut(problem, plan) };
}

/** Width of the cloth that more is used of. */
function widthOf(problem: LayProblem): number {
  return Math.max(0, ...problem.stocks.map((stock) => (stock.kind === "roll" ? stock.width : 0)));
}

/** The three choices out of a pool (`width` of the cloth that more is used of); a plan that is best for several things is told once. */
function chosen(pool: readonly Pooled[], width: number): LayChoice[] {
  const whole = wholest(pool);
  const shortest = shortestOf(whole);
  const { length } = shortest.figures;
  const near = whole.filter(({ figures }) => figures.length <= length * (1 + MOST_EXTRA));
  const byRuler = whole.filter(({ figures }) => figures.ruler !== null);
  const nearByRuler = near.filter(({ figures }) => figures.ruler !== null);
  const easiest =
    nearByRuler.length > 0
      ? least(nearByRuler, ({ figures }) => [figures.ruler!.settings, figures.ruler!.cuts, figures.length])
      : byRuler.length > 0
        ? least(byRuler, ({ figures }) => [figures.length, figures.ruler!.settings, figures.ruler!.cuts])
        : null;
  const offcut = least(near, ({ figures }) => [
    (figures.length - length) * width - offcutArea(figures),
    figures.length,
    // Of equal ones the one at the end: it comes off with one cut and stays on the roll.
    -(figures.offcut === null ? 0 : figures.offcut.box.x + figures.offcut.box.dx),
  ]);
  const found = new Map<Pooled, ChoiceFor[]>();
  const name = (pooled: Pooled, what: ChoiceFor): void => {
    found.set(pooled, [...(found.get(pooled) ?? []), what]);
  };
  name(shortest, "shortest");
  if (easiest !== null) name(easiest, "easiest");
  if (offcut.figures.offcut !== null) name(offcut, "offcut");
  return [...found].map(([{ plan, figures }, best]) => {
    return { best, plan, figures, extraLength: figures.length - length };
  });
}

function offcutArea({ offcut }: LayFigures): number {
  return offcut === null ? 0 : offcut.box.dx * offcut.box.dy;
}

/** The item whose numbers come first in order; the earliest of equals. */
function least<T>(items: readonly T[], numbers: (item: T) => readonly number[]): T {
  return items.reduce((best, item) => {
    const mine = numbers(item);
    const theirs = numbers(best);
    const at = mine.findIndex((value, i) => Math.abs(value - theirs[i]!) > 1e-6);
    return at >= 0 && mine[at]! < theirs[at]! ? item : best;
  });
}

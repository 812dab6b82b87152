import { settledPhases } from "../../problem/lattice.ts";
import type { LayPlan, LayProblem, Stock, StockPlacement, StockUse } from "../../problem/layProblem.ts";
import type { RegionPlan } from "../../problem/region.ts";
import { BREATH, type Breath, nextTurn } from "../breath.ts";
import { isBetterPlan } from "../comparePlans.ts";
import type { Search, SearchBudget } from "../engine.ts";
import { searchPhases } from "../phases/searchPhases.ts";
import { seededRng } from "../rng.ts";
import { arrangeBands } from "./arrangeBands.ts";
import { arrangeWays } from "./arrangeWays.ts";
import type { Arrangement, Arranger, ArrangeStep } from "./layingDesk.ts";
import { type ChooseEngines, freeCopies, type LayingDesk, layingDesk, leastEffort } from "./layingDesk.ts";
import { areaBound, laidLength, placementsOf, regionPlanFrom, type StockJob, stockJob } from "./stockJob.ts";
import { unplacedOf } from "./unplacedReasons.ts";

/** Evaluations of the first full round over several stocks; each round has twice as many on each stock. */
const FIRST_ROUND = 200_000;

/**
 * Lays a whole problem: leftovers and limited rolls first, in their order, each filled with as much piece area as it
 * takes; what is left goes on the open roll, as short as can be. One stock is searched in one go; several are
 * laid once with the first plan that comes for each, then searched in rounds of growing effort, and the best round
 * counts; while pieces are left out, closed ones are taken in another order every other round. Yields at least every 20 ms, returns when the budget is spent or nothing can be better; the result depends
 * on the arguments alone.
 */
export function* arrange(
  problem: LayProblem,
  engines: ChooseEngines,
  budget: SearchBudget,
  seed: number,
): Arrangement {
  const arranger: Arranger = (other, its) => arrange(other, engines, its, seed);
  if (problem.sameWay === true) return yield* arrangeWays(problem, budget, arranger);
  if (problem.shade !== undefined) return yield* arrangeBands(problem, budget, arranger, seed);
  const desk = yield* layingDesk(problem, engines, seed);
  // Less would leave closed cloth half filled, and every worker of a pool gets only its share of the budget.
  const enough = { evaluations: Math.max(budget.evaluations, leastEffort(problem)) };
  if (problem.stocks.length === 1) return yield* arrangeOne(desk, enough);
  let best: LayPlan | null = null;
  let evaluations = 0;
  for (let round = FIRST_LOOK; ; round++) {
    const slice = Math.min(FIRST_ROUND * 2 ** Math.max(0, round), Math.max(0, enough.evaluations - evaluations));
    const isWanting = best?.unplaced.some(({ reason }) => reason === "stock-used-up") ?? false;
    const inOrder = isWanting && round % 2 === 1 ? { ...desk, stocks: inOtherOrder(desk, round) } : desk;
    const turn = arrangeRound(inOrder, slice, round, evaluations);
    for (;;) {
      const step = yield* nextTurn(turn);
      if (!step.done) evaluations = step.value.evaluations;
      const plan: LayPlan | null = step.done ? step.value.plan : null;
      const better: boolean = plan !== null && isBetterPlan(problem, plan, best);
      if (better) best = plan;
      const told: LayPlan | undefined = yield { evaluations, plan: better ? best : null };
      if (told && isBetterPlan(problem, told, best)) best = { ...told, seed };
      if (!step.done) continue;
      const over = step.value.exhausted || evaluations >= enough.evaluations || isSettled(problem, best!);
      if (over) return { ...best!, evaluations };
      break;
    }
  }
}

/**
 * The stocks with the closed ones in another order. Where pieces are left out every closed stock is used anyway, and what
 * fills the first best may be what only the next has room for beside the rest.
 */
function inOtherOrder({ stocks, seed }: LayingDesk, round: number): LayingDesk["stocks"] {
  const rng = seededRng(seed + round);
  const closed = stocks.filter(({ region }) => region.length !== null);
  const drawn = closed.map((stock) => ({ stock, at: rng.unit() })).sort((a, b) => a.at - b.at);
  if (drawn.every(({ stock }, i) => stock === closed[i])) drawn.push(...drawn.splice(0, 1));
  return [...drawn.map(({ stock }) => stock), ...stocks.slice(closed.length)];
}

/** The round before the first: whoever waits for a plan gets the first that comes. */
const FIRST_LOOK = -1;

/** What was laid on one stock. */
interface Laid {
  readonly job: StockJob;
  readonly plan: RegionPlan;
  readonly bound: number | null;
}

/** One search on the only stock, for the whole budget, told of plans found elsewhere. */
function* arrangeOne(desk: LayingDesk, budget: SearchBudget): Arrangement {
  const { problem, seed } = desk;
  const job = stockJob(problem, desk.stocks[0]!, freeCopies(desk), desk.extents);
  const search = searchOf(desk, job, budget, seed);
  let best: LayPlan | null = null;
  let evaluations = 0;
  let laid: Laid = { job, plan: { ...EMPTY, placements: job.job.pinned }, bound: lowest(desk, job) };
  let told: RegionPlan | undefined;
  yield BREATH;
  for (;;) {
    const { done, value } = yield* nextTurn(search, told);
    told = undefined;
    const bound = done ? laid.bound : higher(laid.bound, value.bound);
    const plan = done ? value : value.plan;
    if (!done) evaluations = value.evaluations;
    // Closed cloth may take no piece beside those put down by hand: whoever waits for a plan gets one of these alone.
    const isBare: boolean =
      best === null && plan === null && mayTakeNothing(job) && evaluations >= leastEffort(problem);
    const changed: boolean = plan !== null || isBare || (best !== null && bound !== laid.bound);
    laid = { job, plan: plan ?? laid.plan, bound };
    if (changed) yield BREATH;
    const whole: LayPlan | null = changed ? yield* composedPlan(desk, [laid], evaluations) : null;
    const better: boolean = whole !== null && isBetterPlan(problem, whole, best);
    if (better) best = whole;
    if (done) return { ...best!, evaluations };
    const news: LayPlan | undefined = yield { evaluations, plan: better ? best : null };
    if (news && isBetterPlan(problem, news, best)) {
      best = { ...news, seed };
      const [use] = news.uses;
      const plan = regionPlanFrom(job, news.placements, use?.usedLength ?? 0);
      told = plan === null ? undefined : { ...plan, toll: use?.toll ?? 0 };
      if (told) laid = { ...laid, plan: told };
    }
  }
}

function mayTakeNothing({ job: { goal } }: StockJob): boolean {
  return goal === "most";
}

/** What a pass over all stocks gave. */
interface RoundResult {
  readonly plan: LayPlan;
  /** Every search ended by itself before its effort was spent: another round would find no more. */
  readonly exhausted: boolean;
}

/** One pass over all stocks; yields progress only. */
function* arrangeRound(
  desk: LayingDesk,
  slice: number,
  round: number,
  spentBefore: number,
): Generator<ArrangeStep | Breath, RoundResult, undefined> {
  const free = freeCopies(desk);
  const laid: Laid[] = [];
  let { phases } = desk.problem;
  let evaluations = spentBefore;
  let exhausted = true;
  for (const [index, where] of desk.stocks.entries()) {
    const job = stockJob({ ...desk.problem, phases }, where, free, desk.extents);
    if (job.job.pieces.length === 0) continue;
    const before = evaluations;
    const seed = desk.seed + 1013 * round + 31 * index;
    const search = searchOf(desk, job, { evaluations: slice }, seed);
    let bound = lowest(desk, job);
    let plan: RegionPlan | null = null;
    for (;;) {
      const turn = yield* nextTurn(search);
      if (turn.done) {
        plan = turn.value;
        break;
      }
      evaluations = before + turn.value.evaluations;
      bound = higher(bound, turn.value.bound);
      yield { evaluations, plan: null };
      plan = turn.value.plan ?? plan;
      if (round !== FIRST_LOOK || plan === null) continue;
      exhausted = false;
      break;
    }
    if (evaluations - before >= slice) exhausted = false;
    laid.push({ job, plan, bound });
    const placed = placementsOf(desk.problem, job, plan);
    takeAway(desk.problem, free, placed);
    // What comes from the next stock has to meet what was cut from this one.
    phases = settledPhases(job.job.pieces, job.job.pattern, phases, plan.placements);
  }
  return { plan: yield* composedPlan(desk, laid, evaluations), exhausted };
}

const EMPTY: RegionPlan = { placements: [], left: [], length: 0 };

function searchOf(desk: LayingDesk, { job }: StockJob, budget: SearchBudget, seed: number): Search {
  if (job.pieces.length === 0) return nothingToDo();
  return searchPhases(desk.engines, job, budget, seed);
}

// biome-ignore lint/correctness/useYield: a search that has nothing to look for
function* nothingToDo(): Search {
  return EMPTY;
}

function lowest(desk: LayingDesk, job: StockJob): number | null {
  return job.job.goal === "shortest" && job.job.pieces.length > 0 ? areaBound(job, desk.extentsById) : null;
}

function higher(a: number | null, b: number | null): number | null {
  return a === null ? null : Math.max(a, b ?? a);
}

function takeAway(problem: LayProblem, free: number[][], placements: readonly StockPlacement[]): void {
  for (const { pieceId, copy } of placements) {
    const own = free[problem.pieces.findIndex((piece) => piece.id === pieceId)]!;
    const at = own.indexOf(copy);
    if (at >= 0) own.splice(at, 1);
  }
}

function* composedPlan(
  desk: LayingDesk,
  laid: readonly Laid[],
  evaluations: number,
): Generator<Breath, LayPlan, unknown> {
  const { problem, seed } = desk;
  const placements: StockPlacement[] = [];
  const lengths = new Map<Stock, number>();
  for (const { job, plan } of laid) {
    for (const placement of placementsOf(problem, job, plan)) placements.push(placement);
    yield BREATH;
    lengths.set(job.where.stock, laidLength(job, plan));
    yield BREATH;
  }
  const placed = new Map<string, number>();
  for (const { pieceId } of placements) placed.set(pieceId, (placed.get(pieceId) ?? 0) + 1);
  const left = problem.pieces.map(({ id, count }) => count - (placed.get(id) ?? 0));
  const uses = problem.stocks.map((stock): StockUse => {
    const here = laid.find(({ job }) => job.where.stock === stock);
    const complete = here?.plan.left.every((count) => count === 0) ?? false;
    const usedLength = lengths.get(stock) ?? 0;
    const bound = complete && here!.plan.length > 0 ? here!.bound : null;
    const across = stock.kind === "roll" ? stock.width : 0;
    const toll = here?.plan.toll ?? 0;
    return {
      stockId: stock.id,
      usedLength,
      bound: bound === null ? null : withoutRounding(bound, usedLength, across),
      ...(toll > 0 ? { toll } : {}),
    };
  });
  const unplaced = unplacedOf(problem, left, desk.reason);
  return { materialId: problem.materialId, placements, unplaced, uses, evaluations, seed };
}

/** Share of the cloth's size by which grids may round the outlines of a row that a bound is made of. */
const ROUNDING = 2e-8;

/** A bound that is above a laid length by no more than rounding is that length: what is laid can be laid. */
function withoutRounding(bound: number, laid: number, across: number): number {
  return bound > laid && bound - laid <= ROUNDING * Math.max(laid, across) ? laid : bound;
}

/**
 * True when no other plan can be better: everything lies on leftovers, or the open roll is as short as its bound. What a
 * limited roll keeps stays on it, and its length has no bound, so a plan on one is never settled.
 */
export function isSettled(problem: LayProblem, plan: LayPlan): boolean {
  if (problem.pieces.length === 0 || problem.stocks.length === 0) return true;
  if (plan.unplaced.some(({ reason }) => reason === "stock-used-up")) return false;
  const touched = plan.uses.filter((use) => use.usedLength > 0);
  if (touched.length === 0) return true;
  if (touched.length > 1) return false;
  const [use] = touched;
  const stock = problem.stocks.find(({ id }) => id === use!.stockId)!;
  if (isOpen(stock)) return use!.bound !== null && use!.usedLength <= use!.bound * (1 + 1e-12);
  return stock.kind === "remnant" && stock === problem.stocks.find((other) => !isOpen(other));
}

function isOpen(stock: Stock): boolean {
  return stock.kind === "roll" && stock.length === null;
}

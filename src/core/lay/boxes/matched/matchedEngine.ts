import { quickBoundSteps } from "../../bounds/quickBound.ts";
import { isMatched } from "../../problem/lattice.ts";
import { isRectangleJob, mayLieAslant, rectangleJobOf } from "../../problem/rectangles/prepare.ts";
import { provenLength } from "../../problem/rectangles/regionPlan.ts";
import { searchTablesOf } from "../../problem/rectangles/searchTables.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { inOneGo, nextTurn } from "../../search/breath.ts";
import { isBetterRegionPlan } from "../../search/comparePlans.ts";
import type { Engine, Search, SearchStep } from "../../search/engine.ts";
import { freeAxes } from "../../search/phases/phaseChoices.ts";
import { racePhases } from "../../search/phases/searchPhases.ts";
import { type Rng, seededRng } from "../../search/rng.ts";
import { criticalAxes } from "./criticalPhases.ts";
import { everyOrder, MOST_BOXES } from "./everyOrder.ts";
import { type Laying, layInOrder } from "./layInOrder.ts";
import { type LaidBox, type MatchedJob, matchedJobOf, matchedPlan } from "./matchedJob.ts";

/** Looks between two turns: some milliseconds. */
const LOOKS_PER_TURN = 20_000;
/** Orders tried in vain before the search starts again from another one. */
const PATIENCE = 400;
/** A worse order is taken up with this chance at first. */
const HEAT = 0.02;

/**
 * Rectangles of which some are held to the cloth's pattern. Of few boxes every order is tried, with every phase where
 * the maker leaves it free; of more, orders improved by small changes, each box laid leftmost on its rungs. Its bound is
 * that of the boxes without the pattern.
 */
export const matchedEngine: Engine = {
  id: "matched-rectangles",
  choosesPhases: true,
  accepts: (job) => isMatched(job) && isRectangleJob(job) && !mayLieAslant(job),
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
        ? racePhases(() => [ordersEngine], job, { evaluations }, seed)
        : ordersEngine.search(job, { evaluations }, seed);
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

/** Boxes laid in orders that are improved by small changes; all phases are known. */
const ordersEngine: Engine = {
  id: "matched-orders",
  accepts: (job) => matchedEngine.accepts(job),
  *search(job, budget, seed): Search {
    const prepared = matchedJobOf(job);
    const first = startOrders(prepared);
    const bound = boundOf(job);
    let evaluations = 0;
    let best = null as { laying: Laying; plan: RegionPlan } | null;
    let fresh = false;
    const offer = (laying: Laying): void => {
      if (best !== null && !isLess(laying, best.laying)) return;
      best = { laying, plan: matchedPlan(prepared, laying.laid) };
      fresh = true;
    };
    const step = (): SearchStep => {
      const plan = fresh ? best!.plan : null;
      fresh = false;
      return { evaluations, plan, bound };
    };
    let start = first[0]!;
    for (const order of first) {
      const laying = layInOrder(
        prepared,
        order,
        order.map(() => -1),
      );
      evaluations += laying.looks;
      if (best === null || isLess(laying, best.laying)) start = order;
      offer(laying);
    }
    yield step();
    if (start.length === 0) return best!.plan;
    const rng = seededRng(seed);
    for (let since = evaluations; evaluations < budget.evaluations; ) {
      for (const laying of improved(prepared, start, rng)) {
        evaluations += laying.looks;
        offer(laying);
        if (evaluations - since < LOOKS_PER_TURN) continue;
        since = evaluations;
        yield step();
        if (evaluations >= budget.evaluations) break;
      }
    }
    if (fresh) yield step();
    return best!.plan;
  },
};

/** Shortest length proven for the same boxes laid anywhere, mm: no plan on the pattern is shorter. */
function boundOf(job: RegionJob): number | null {
  if (job.goal !== "shortest") return null;
  const prepared = rectangleJobOf(job);
  const tables = searchTablesOf(prepared);
  if (tables.pieces === 0) return null;
  return provenLength(prepared, tables, Math.max(inOneGo(quickBoundSteps(tables)), prepared.pinnedEnd));
}

/** Every copy's kind by falling area, length and width. */
function startOrders({ kinds }: MatchedJob): number[][] {
  const copies = kinds.flatMap(({ copies: own }, kind) => own.map(() => kind));
  const size = (kind: number, of: "along" | "across"): number => {
    return Math.max(0, ...kinds[kind]!.ways.map((way) => way[of]));
  };
  const by = (value: (kind: number) => number): number[] =>
    [...copies].sort((a, b) => value(b) - value(a) || a - b);
  return [by((kind) => kinds[kind]!.area), by((kind) => size(kind, "along")), by((kind) => size(kind, "across"))];
}

function isLess(a: Pick<Laying, "end" | "areaLeft">, b: Pick<Laying, "end" | "areaLeft">): boolean {
  if (Math.abs(a.areaLeft - b.areaLeft) > 1e-6 * Math.max(1, b.areaLeft)) return a.areaLeft < b.areaLeft;
  return a.end < b.end - 1e-6;
}

/** Changes an order by small steps until nothing has come of it for long; yields every laying tried. */
function* improved(prepared: MatchedJob, start: readonly number[], rng: Rng): Generator<Laying> {
  let order = [...start];
  let ways = order.map(() => -1);
  for (let i = order.length - 1; i > 0; i--) if (rng.unit() < 0.3) swap(order, i, rng.below(i + 1));
  let now = layInOrder(prepared, order, ways);
  yield now;
  let best = now;
  for (let idle = 0, tries = 0; idle < PATIENCE; tries++) {
    const [nextOrder, nextWays] = changed(prepared, order, ways, rng);
    const next = layInOrder(prepared, nextOrder, nextWays);
    yield next;
    idle++;
    if (isLess(next, best)) [best, idle] = [next, 0];
    const isBetter = isLess(next, now) || (!isLess(now, next) && next.moment <= now.moment);
    if (!isBetter && rng.unit() >= HEAT / (1 + tries / 500)) continue;
    [order, ways, now] = [nextOrder, nextWays, next];
  }
}

function changed(
  { kinds }: MatchedJob,
  order: readonly number[],
  ways: readonly number[],
  rng: Rng,
): [number[], number[]] {
  const nextOrder = [...order];
  const nextWays = [...ways];
  const n = order.length;
  const i = rng.below(n);
  const kind = rng.below(3);
  const own = kinds[nextOrder[i]!]!.ways.length;
  if (kind === 0 && own > 1) nextWays[i] = rng.below(own + 1) - 1;
  else if (kind === 1) {
    const j = rng.below(n);
    swap(nextOrder, i, j);
    swap(nextWays, i, j);
  } else {
    const j = rng.below(n);
    nextOrder.splice(j, 0, ...nextOrder.splice(i, 1));
    nextWays.splice(j, 0, ...nextWays.splice(i, 1));
  }
  return [nextOrder, nextWays];
}

function swap(list: number[], i: number, j: number): void {
  const held = list[i]!;
  list[i] = list[j]!;
  list[j] = held;
}

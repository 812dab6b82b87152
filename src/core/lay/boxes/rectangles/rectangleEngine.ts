import { type BoundHolder, quickBoundSteps } from "../../bounds/quickBound.ts";
import { reachableLengths } from "../../bounds/reachableLengths.ts";
import { isRectangleJob, rectangleJobOf } from "../../problem/rectangles/prepare.ts";
import type { PlacedRectangle } from "../../problem/rectangles/rectangleJob.ts";
import { provenLength } from "../../problem/rectangles/regionPlan.ts";
import { type SearchTables, searchTablesOf } from "../../problem/rectangles/searchTables.ts";
import type { RegionJob } from "../../problem/region.ts";
import { BREATH, type Breath } from "../../search/breath.ts";
import type { Engine, Search, SearchBudget, SearchStep } from "../../search/engine.ts";
import { type Rng, seededRng } from "../../search/rng.ts";
import { RectangleIncumbent } from "./incumbent.ts";
import { endOf, FIRST_AMBITION, SLICE, shorten } from "./portfolio.ts";
import { deepPlans, isShallow } from "./sheet/sheetDepth.ts";
import { decodedRectangles, orderSearch, startOrders } from "./skyline/orderSearch.ts";
import { decodeBuffers, decodeOrder, UNCAPPED } from "./skyline/skylineDecode.kernel.ts";
import { freeSpacePlans } from "./spaces/freeSpaces.ts";

/** Rectangles laid freely on a rectangular region: strips and square-cut panels. */
export const rectangleEngine: Engine = {
  id: "rectangles",
  accepts: isRectangleJob,
  search: searchRectangles,
};

function* searchRectangles(job: RegionJob, budget: SearchBudget, seed: number): Search {
  const prepared = rectangleJobOf(job);
  const tables = searchTablesOf(prepared);
  const incumbent = new RectangleIncumbent(prepared, tables.area);
  if (tables.pieces === 0) {
    yield { evaluations: 0, plan: incumbent.plan, bound: 0 };
    return incumbent.plan;
  }
  const rng = seededRng(seed);
  const limit = prepared.length ?? UNCAPPED;
  let evaluations = 0;
  const bound: BoundHolder = { value: 0 };
  const step = (): SearchStep => ({
    evaluations,
    plan: incumbent.takeNews(),
    bound: job.goal === "shortest" ? provenLength(prepared, tables, bound.value) : null,
  });
  yield BREATH;
  const first = yield* firstPlan(tables, incumbent, limit);
  evaluations += first.looks;
  yield step();
  bound.value = Math.max(yield* quickBoundSteps(tables), prepared.pinnedEnd);
  if (incumbent.areaLeft > 0) {
    for (const looks of fillUp(tables, incumbent, rng, limit, first.order)) {
      if (looks === BREATH) {
        yield BREATH;
        continue;
      }
      evaluations += looks;
      incumbent.adoptPlan(yield step());
      if (evaluations >= budget.evaluations) return incumbent.plan;
    }
  }
  const reachable = reachableLengths(tables, incumbent.end);
  yield BREATH;
  bound.value = reachable.atLeast(bound.value);
  const offer = (end: number, rectangles: readonly PlacedRectangle[]): number => {
    incumbent.offerLaid(0, end, () => rectangles);
    return incumbent.end;
  };
  for (const looks of freeSpacePlans(tables, startOrders(tables), bound.value, incumbent.end, offer)) {
    evaluations += looks;
    incumbent.adoptPlan(yield step());
    if (evaluations >= budget.evaluations) return incumbent.plan;
  }
  const ambition = { share: FIRST_AMBITION };
  const context = { tables, incumbent, reachable, rng, bound, ambition, order: first.order };
  for (const looks of shorten(context)) {
    if (looks === BREATH) {
      yield BREATH;
      continue;
    }
    evaluations += looks;
    incumbent.adoptPlan(yield step());
    if (evaluations >= budget.evaluations) return incumbent.plan;
  }
  yield step();
  return incumbent.plan;
}

/** Decodes the customary orders and keeps the best plan and its order. */
function* firstPlan(
  tables: SearchTables,
  incumbent: RectangleIncumbent,
  limit: number,
): Generator<Breath, { readonly order: Int32Array; readonly looks: number }, unknown> {
  const buffers = decodeBuffers(tables);
  let looks = 0;
  let best: Int32Array | null = null;
  for (const order of startOrders(tables)) {
    // One order is enough when there are thousands of pieces: the next would keep the maker waiting.
    if (best !== null && looks > 3_000_000) break;
    const areaLeft = decodeOrder(tables, order, limit, buffers);
    looks += buffers.result[2]! + order.length;
    yield BREATH;
    const better = incumbent.offerLaid(areaLeft, buffers.result[1]!, () => decodedRectangles(tables, buffers));
    if (better || best === null) best = order;
  }
  return { order: best!, looks };
}

/** On a closed region: leaves out as little area as possible, until everything fits. */
function* fillUp(
  tables: SearchTables,
  incumbent: RectangleIncumbent,
  rng: Rng,
  limit: number,
  order: Int32Array,
): Generator<number | Breath, void, void> {
  const search = orderSearch(tables, order, rng);
  const deep = isShallow(tables, limit) ? deepFill(tables, incumbent, rng, limit) : null;
  // A few pieces are seen branch by branch before any order is improved: a short search has no time for both.
  yield* deepTurn(deep, DEEP_SLICE);
  for (let round = 20 * SLICE; incumbent.areaLeft > 0; round *= 1.5) {
    yield* search.begin(limit, round);
    for (let state = "more"; state === "more"; ) {
      const before = search.spent();
      state = search.advance(SLICE);
      if (search.least() < incumbent.areaLeft) {
        decodeOrder(tables, search.best, limit, search.buffers);
        incumbent.offerLaid(search.least(), search.buffers.result[1]!, () =>
          decodedRectangles(tables, search.buffers),
        );
      }
      yield search.spent() - before;
      yield* deepTurn(deep, SLICE);
    }
  }
}

/** Options looked at between two turns of a search branch by branch. */
const DEEP_SLICE = 20_000;

/** Goes on branch by branch until so many options more have been looked at, or all. */
function* deepTurn(deep: Generator<number, void, void> | null, most: number): Generator<number, void, void> {
  for (let looks = 0; deep !== null && looks < most; ) {
    const turn = deep.next();
    if (turn.done) return;
    looks += turn.value;
    yield turn.value;
  }
}

/** The same where few pieces fit, branch by branch. */
function deepFill(
  tables: SearchTables,
  incumbent: RectangleIncumbent,
  rng: Rng,
  limit: number,
): Generator<number, void, void> {
  const laid = (): number => tables.area - incumbent.areaLeft;
  const offer = (area: number, rectangles: readonly PlacedRectangle[]): void => {
    incumbent.offerLaid(tables.area - area, endOf(tables, rectangles), () => rectangles);
  };
  return deepPlans(tables, limit, laid, offer, rng, DEEP_SLICE);
}

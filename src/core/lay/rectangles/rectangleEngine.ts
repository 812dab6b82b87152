import { seededRng } from "../rng.ts";
import type { Engine, RegionJob, RegionPlan, Search, SearchBudget } from "../types.ts";
import { decodedRectangles, orderSearch, startOrders } from "./orderSearch.ts";
import { isRectangleJob, rectangleJobOf } from "./prepare.ts";
import type { RectangleJob } from "./rectangleJob.ts";
import { lengthOfEnd, regionPlanOf } from "./regionPlan.ts";
import { searchTablesOf } from "./searchTables.ts";
import { decodeBuffers, decodeOrder, UNCAPPED } from "./skylineDecode.kernel.ts";

/** Looks between two yields: some 10 ms. */
const SLICE = 50_000;

/** Rectangles laid freely on a rectangular region: strips and square-cut panels. */
export const rectangleEngine: Engine = {
  id: "rectangles",
  accepts: isRectangleJob,
  search: (job, budget, seed) => searchRectangles(job, budget, seed),
};

function* searchRectangles(job: RegionJob, budget: SearchBudget, seed: number): Search {
  const prepared = rectangleJobOf(job);
  const tables = searchTablesOf(prepared);
  const limit = prepared.length ?? UNCAPPED;
  const buffers = decodeBuffers(tables);
  const rng = seededRng(seed);
  let evaluations = 0;
  let plan: RegionPlan = regionPlanOf(prepared, []);
  if (tables.pieces === 0) {
    yield { evaluations, plan, bound: boundOf(prepared, tables.area) };
    return plan;
  }
  let bestLeft = Infinity;
  let bestEnd = UNCAPPED;
  let bestOrder = new Int32Array(0);
  for (const order of startOrders(tables)) {
    const areaLeft = decodeOrder(tables, order, limit, buffers);
    evaluations += buffers.result[2]! + order.length;
    const end = buffers.result[1]!;
    const better = areaLeft < bestLeft || (areaLeft === bestLeft && end < bestEnd);
    if (better) {
      bestLeft = areaLeft;
      bestEnd = end;
      bestOrder = order.slice();
      plan = regionPlanOf(prepared, decodedRectangles(tables, buffers));
    }
    yield { evaluations, plan: better ? plan : null, bound: boundOf(prepared, tables.area) };
    if (evaluations >= budget.evaluations) return plan;
  }
  const lower = Math.ceil(tables.area / tables.width - 1e-9);
  const search = orderSearch(tables, bestOrder, rng);
  let round = 20 * SLICE;
  while (evaluations < budget.evaluations && (bestLeft > 0 || bestEnd > Math.max(lower, prepared.pinnedEnd))) {
    search.begin(bestLeft > 0 ? limit : bestEnd - 1, round);
    round *= 1.5;
    for (let state = "more"; state === "more"; ) {
      const before = search.spent();
      state = search.advance(SLICE);
      evaluations += search.spent() - before;
      const improved = state === "found" || search.least() < bestLeft;
      if (improved && bestLeft > 0 && search.least() < bestLeft) {
        bestLeft = search.least();
        decodeOrder(tables, search.best, limit, search.buffers);
        bestEnd = search.buffers.result[1]!;
        plan = regionPlanOf(prepared, decodedRectangles(tables, search.buffers));
      } else if (state === "found") {
        bestEnd = search.buffers.result[1]!;
        plan = regionPlanOf(prepared, decodedRectangles(tables, search.buffers));
      }
      yield { evaluations, plan: improved ? plan : null, bound: boundOf(prepared, tables.area) };
      if (evaluations >= budget.evaluations) return plan;
    }
  }
  return plan;
}

function boundOf(prepared: RectangleJob, area: number): number | null {
  if (prepared.job.goal !== "shortest" || prepared.width === 0) return null;
  return lengthOfEnd(prepared, Math.max(Math.ceil(area / prepared.width - 1e-9), prepared.pinnedEnd));
}

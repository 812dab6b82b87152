// `npm run bench:panels -- [seconds] [name]`: density against processor time on made-up detailed bag panels (or those jobs
// whose name begins so), the outline engine alone on one thread; memory at the end. Every plan is checked.

import { benchProblem } from "../../src/cli/bench/benchProblem.ts";
import { readDataset } from "../../src/cli/bench/dataset.ts";
import { polygonArea } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { outlineEngine } from "../../src/core/lay/outlines/outlineEngine.ts";
import type { LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionPlan } from "../../src/core/lay/problem/region.ts";
import { inOneGo, nextTurn } from "../../src/core/lay/search/breath.ts";
import jobs from "./panelJobs.ts";

const seconds = Number(process.argv[2] ?? 60);
const only = process.argv[3] ?? "";
const MARKS = [0.3, 1, 2, 5, 10, 20, 30, 60, 120, 300];

function checked(problem: LayProblem, plan: RegionPlan): void {
  const faults = checkPlan(problem, {
    materialId: problem.materialId,
    placements: plan.placements.map((placement) => ({ ...placement, stockId: problem.stocks[0]!.id })),
    unplaced: [],
    uses: [{ stockId: problem.stocks[0]!.id, usedLength: plan.length, bound: null }],
    evaluations: 0,
    seed: 1,
  });
  if (faults.length > 0) throw new Error(`wrong plan: ${JSON.stringify(faults[0])}`);
}

for (const instance of readDataset(jobs, "panelJobs.ts").instances) {
  if (!instance.name.startsWith(only)) continue;
  const problem = benchProblem(instance, false);
  const { pieces, gap, margin, stocks } = problem;
  const width = stocks[0]!.kind === "roll" ? stocks[0]!.width : 0;
  const region = { width, length: null, outline: null, flaws: [] };
  const job = { region, pieces, gap, margin, pinned: [], goal: "shortest" as const };
  const area = pieces.reduce((sum, piece) => sum + piece.count * polygonArea(piece.outline), 0);
  const search = outlineEngine.search(job, { evaluations: Infinity }, 1);
  const start = process.cpuUsage();
  const used = (): number => process.cpuUsage(start).user / 1e6;
  const marks = MARKS.filter((mark) => mark <= seconds);
  const told: string[] = [];
  let plan: RegionPlan | null = null;
  let plans = 0;
  while (marks.length > 0) {
    const step = inOneGo(nextTurn(search));
    if (step.done) break;
    const now = used();
    if (step.value.plan !== null) {
      plan = step.value.plan;
      if (plans++ < 2) told.push(`${plans === 1 ? "first" : "second"} plan ${now.toFixed(2)} s`);
    }
    while (marks.length > 0 && now >= marks[0]!) {
      const density = plan === null ? "-" : ((100 * area) / (width * plan.length)).toFixed(2);
      told.push(`${marks.shift()} s ${density}`);
    }
  }
  if (plan !== null) checked(problem, plan);
  console.log(`${instance.name}: ${told.join("  ")}  ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`);
}

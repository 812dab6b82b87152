// `npm run bench:repeats -- [seconds] [jobs]`: the outline engine with and without repeats on seeded jobs of many
// copies of two panels, in turn, one thread; densities and their difference, every plan checked.
import { polygonArea } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/checkPlan.ts";
import { OUTLINE_TUNING, outlineEngineWith } from "../../src/core/lay/outlines/outlineEngine.ts";
import type { LayPlan, LayProblem, RegionJob, RegionPlan } from "../../src/core/lay/types.ts";
import { repeatJob } from "./repeatJobs.ts";

const seconds = Number(process.argv[2] ?? 20);
const jobs = Number(process.argv[3] ?? 5);

function bestPlan(job: RegionJob, repeats: boolean): RegionPlan {
  const search = outlineEngineWith({ ...OUTLINE_TUNING, repeats }).search(job, { evaluations: Infinity }, 1);
  const end = performance.now() + seconds * 1000;
  let plan: RegionPlan | null = null;
  while (performance.now() < end) {
    const step = search.next();
    if (step.done) return step.value;
    plan = step.value.plan ?? plan;
  }
  if (plan === null) throw new Error("no plan in time");
  return plan;
}

function verified(job: RegionJob, plan: RegionPlan): number {
  const problem: LayProblem = {
    materialId: "cloth",
    pieces: job.pieces,
    stocks: [{ kind: "roll", id: "roll", width: job.region.width, length: null, flaws: [] }],
    gap: job.gap,
    margin: job.margin,
    pinned: [],
  };
  const laid: LayPlan = {
    materialId: "cloth",
    placements: plan.placements.map((placement) => ({ ...placement, stockId: "roll" })),
    unplaced: [],
    uses: [{ stockId: "roll", usedLength: plan.length, bound: null }],
    evaluations: 0,
    seed: 1,
  };
  const faults = checkPlan(problem, laid);
  if (faults.length > 0) throw new Error(`wrong plan: ${JSON.stringify(faults[0])}`);
  const area = job.pieces.reduce((sum, piece) => sum + piece.count * polygonArea(piece.outline), 0);
  return (100 * area) / (job.region.width * plan.length);
}

let gained = 0;
for (let seed = 1; seed <= jobs; seed++) {
  const job = repeatJob(seed);
  const without = verified(job, bestPlan(job, false));
  const withRepeats = verified(job, bestPlan(job, true));
  gained += withRepeats - without;
  console.log(
    `job ${seed}  without ${without.toFixed(2)} %  with ${withRepeats.toFixed(2)} %  ${(withRepeats - without).toFixed(2)} points`,
  );
}
console.log(`mean gain ${(gained / jobs).toFixed(2)} points, ${jobs} jobs, ${seconds} s each, one thread`);

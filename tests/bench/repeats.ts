// `npm run bench:repeats -- [seconds] [jobs] [panels]`: the outline engine with and without repeats on seeded jobs of
// many copies of two panels (or, with 8, a run of bags of eight), in turn, one thread, so many seconds of processor
// time each; densities and their difference, every plan checked.
import { polygonArea } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { OUTLINE_TUNING, outlineEngineWith } from "../../src/core/lay/outlines/outlineEngine.ts";
import type { LayPlan, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../src/core/lay/problem/region.ts";
import { inOneGo, nextTurn } from "../../src/core/lay/search/breath.ts";
import { bagRunJob, repeatJob } from "./repeatJobs.ts";

const seconds = Number(process.argv[2] ?? 20);
const jobs = Number(process.argv[3] ?? 5);
const jobOf = process.argv[4] === "8" ? bagRunJob : repeatJob;

function bestPlan(job: RegionJob, repeats: boolean): RegionPlan {
  const search = outlineEngineWith({ ...OUTLINE_TUNING, repeats }).search(job, { evaluations: Infinity }, 1);
  const start = process.cpuUsage();
  const used = (): number => process.cpuUsage(start).user / 1e6;
  let plan: RegionPlan | null = null;
  while (used() < seconds) {
    const step = inOneGo(nextTurn(search));
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
  const job = jobOf(seed);
  const without = verified(job, bestPlan(job, false));
  const withRepeats = verified(job, bestPlan(job, true));
  gained += withRepeats - without;
  console.log(
    `job ${seed}  without ${without.toFixed(2)} %  with ${withRepeats.toFixed(2)} %  ${(withRepeats - without).toFixed(2)} points`,
  );
}
console.log(
  `mean gain ${(gained / jobs).toFixed(2)} points, ${jobs} jobs, ${seconds} s of processor time each, one thread`,
);

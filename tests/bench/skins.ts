// `npm run bench:skins -- [--evaluations N] [--seconds N] [--jobs N] [--seeds N] [--turns quarter|any]`: 40 panels offered
// to a skin with five flaws and to a roll of equal area; the share of each that is used and the difference, every plan
// checked. Skin and roll are filled by choice, which helps straight edges more; so all 40 on an open roll of that width
// are told as well. With --seconds two workers and all engines search by the clock, else the outline engine alone.
import { parseArgs } from "node:util";
import { polygonArea } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { outlineEngine } from "../../src/core/lay/outlines/outlineEngine.ts";
import type { LayPlan, LayProblem, Stock } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob } from "../../src/core/lay/problem/region.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { nodePool } from "../../src/worker/nodePool.ts";
import { skinJobs } from "./skinJobs.ts";

const { values } = parseArgs({
  options: {
    evaluations: { type: "string", default: "20000000" },
    seconds: { type: "string" },
    jobs: { type: "string", default: "3" },
    seeds: { type: "string", default: "3" },
    turns: { type: "string" },
  },
});
const evaluations = Number(values.evaluations);
const seconds = values.seconds === undefined ? null : Number(values.seconds);
const jobs = Number(values.jobs);
const seeds = Number(values.seeds);

const pool =
  seconds === null ? null : nodePool(2, new URL("../../dist/worker/nodeWorkerEntry.js", import.meta.url));

async function laid(problem: LayProblem, seed: number): Promise<LayPlan> {
  if (pool !== null && seconds !== null) {
    const running = pool.search({ problem, mode: "free", seed, evaluations: Infinity });
    const timer = setTimeout(() => running.stop(), seconds * 1000);
    const { plan } = await running.result;
    clearTimeout(timer);
    return plan;
  }
  const search = arrange(problem, () => [outlineEngine], { evaluations }, seed);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

function problemOf({ region, pieces, gap, margin }: RegionJob, length = region.length): LayProblem {
  const { width, outline, flaws } = region;
  const stock: Stock =
    outline === null
      ? { kind: "roll", id: "stock", width, length, flaws }
      : { kind: "remnant", id: "stock", outline, flaws };
  return { materialId: "leather", pieces, stocks: [stock], gap, margin, pinned: [] };
}

/** Area of the pieces laid and the length they take, once the checker has passed the plan. */
async function outcome(
  problem: LayProblem,
  seed: number,
): Promise<{ readonly area: number; readonly length: number }> {
  const plan = await laid(problem, seed);
  const faults = checkPlan(problem, plan);
  if (faults.length > 0) throw new Error(`wrong plan: ${JSON.stringify(faults[0])}`);
  const areas = new Map(problem.pieces.map(({ id, outline }) => [id, polygonArea(outline)]));
  const area = plan.placements.reduce((sum, { pieceId }) => sum + areas.get(pieceId)!, 0);
  return { area, length: plan.uses[0]!.usedLength };
}

const mean = (all: readonly number[]): number => all.reduce((sum, value) => sum + value, 0) / all.length;

/** Percent of the area used: on the skin, on the limited roll, on the open roll that takes all. */
type Shares = readonly [number, number, number];

async function shares(jobSeed: number, seed: number, of: (job: RegionJob) => RegionJob): Promise<Shares> {
  const { skin, roll, area } = skinJobs(jobSeed);
  const onSkin = await outcome(problemOf(of(skin)), seed);
  const onRoll = await outcome(problemOf(of(roll)), seed);
  const onOpen = await outcome(problemOf(of(roll), null), seed);
  const open = onOpen.area / (roll.region.width * onOpen.length);
  return [(100 * onSkin.area) / area, (100 * onRoll.area) / area, 100 * open];
}

function tell(name: string, of: readonly Shares[]): void {
  const [skin, roll, open] = [0, 1, 2].map((k) => mean(of.map((one) => one[k]!))) as [number, number, number];
  console.log(
    `${name}  skin ${skin.toFixed(2)} %  roll ${roll.toFixed(2)} %  ${(skin - roll).toFixed(2)} points  all on an open roll ${open.toFixed(2)} %  ${(skin - open).toFixed(2)} points`,
  );
}

const turns = {
  quarter: (job: RegionJob): RegionJob => job,
  any: (job: RegionJob): RegionJob => ({
    ...job,
    pieces: job.pieces.map((piece) => ({ ...piece, freeTurn: true })),
  }),
};

const effort = seconds === null ? `${evaluations} evaluations each` : `${seconds} s each, two workers`;
for (const [name, of] of Object.entries(turns)) {
  if (values.turns !== undefined && values.turns !== name) continue;
  const all: Shares[] = [];
  for (let job = 1; job <= jobs; job++) {
    for (let seed = 1; seed <= seeds; seed++) all.push(await shares(job, seed, of));
    tell(`turns: ${name}, job ${job}`, all.slice(-seeds));
  }
  tell(`turns: ${name}, mean of ${jobs} jobs, ${seeds} seeds, ${effort}:`, all);
}
pool?.close();

// `npm run bench:steps -- [seconds] [name]`: the outline engine on growing jobs, repeats and a skin, one thread. All in
// processor time: first plan, evaluations a second once the search is under way, the longest turn in which the engine
// cannot be stopped and when it was, turns over 50 ms. A turn may hold a collection of garbage.

import { benchProblem } from "../../src/cli/bench/benchProblem.ts";
import { readDataset } from "../../src/cli/bench/dataset.ts";
import { arrange } from "../../src/core/lay/arrange.ts";
import { chooseEngines } from "../../src/core/lay/chooseEngines.ts";
import type { LayProblem, RegionJob } from "../../src/core/lay/types.ts";
import { repeatJob } from "./repeatJobs.ts";
import scaleJobs from "./scaleJobs.ts";
import { skinJobs } from "./skinJobs.ts";

const seconds = Number(process.argv[2] ?? 10);
const only = process.argv[3] ?? "";
/** Longest time between two turns that a host is promised, s. */
const PROMISED = 0.05;

function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function problemOf({ region, pieces, gap, margin }: RegionJob): LayProblem {
  const { width, length, outline, flaws } = region;
  const stock = outline
    ? ({ kind: "remnant", id: "stock", outline, flaws } as const)
    : ({ kind: "roll", id: "stock", width, length, flaws } as const);
  return { materialId: "bench", pieces, stocks: [stock], gap, margin, pinned: [] };
}

function measure(name: string, problem: LayProblem): void {
  const start = processorTime();
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: Infinity }, 1);
  let before = start;
  let first: number | null = null;
  let longest = 0;
  let longestAt = 0;
  let over = 0;
  let half = 0;
  let evaluations = 0;
  while (before - start < seconds) {
    const { value, done } = search.next();
    const now = processorTime();
    if (done || !("plan" in value)) break;
    if (value.plan !== null) first ??= now - start;
    if (now - before > longest) {
      longest = now - before;
      longestAt = now - start;
    }
    if (now - before > PROMISED) over++;
    if (now - start < seconds / 2) half = value.evaluations;
    evaluations = value.evaluations;
    before = now;
  }
  const rate = ((evaluations - half) / (seconds / 2) / 1e6).toFixed(2);
  const memory = Math.round(process.memoryUsage.rss() / 1e6);
  console.log(
    `${name.padEnd(20)} first plan ${first?.toFixed(2) ?? "-"} s  ${rate} M evaluations/s  longest turn ${(1000 * longest).toFixed(0)} ms at ${longestAt.toFixed(2)} s  ${over} over ${1000 * PROMISED} ms  ${memory} MB`,
  );
}

const { instances } = readDataset(scaleJobs, "scaleJobs.ts");
const jobs: [string, LayProblem][] = [
  ...instances.map((instance): [string, LayProblem] => [instance.name, benchProblem(instance, false)]),
  ["repeats", problemOf(repeatJob(1))],
  ["skin", problemOf(skinJobs(1).skin)],
];
for (const [name, problem] of jobs) if (name.startsWith(only)) measure(name, problem);

import { BREATH } from "../../src/core/lay/search/breath.ts";
// `npm run bench:steps -- [seconds] [name]`: the search on growing jobs, bag jobs, repeats, a skin and flawed ones, one
// thread. All in processor time: first plan, evaluations a second once the search is under way, the longest turn in which the engine
// cannot be stopped and when it was, turns over 50 ms. A turn is measured on the thread that searches (to the
// scheduler's tick), where the system tells it (Linux), else on all threads of the process, those that compile and
// collect garbage included; the rest is on all threads. Then, by the clock, a pool of two workers that is told to stop.

import { readFileSync } from "node:fs";

import { setTimeout as after } from "node:timers/promises";
import { benchProblem } from "../../src/cli/bench/benchProblem.ts";
import { readDataset } from "../../src/cli/bench/dataset.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob } from "../../src/core/lay/problem/region.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { nodePool } from "../../src/worker/nodePool.ts";
import bagJobs from "./bagJobs.ts";
import { repeatJob } from "./repeatJobs.ts";
import scaleJobs from "./scaleJobs.ts";
import { flawedSkin, skinJobs } from "./skinJobs.ts";

const seconds = Number(process.argv[2] ?? 10);
const only = process.argv[3] ?? "";
/** Longest time between two turns that a host is promised, s. */
const PROMISED = 0.05;

function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Processor time of this thread, s. */
function threadTime(): number {
  try {
    return Number(readFileSync("/proc/thread-self/schedstat", "utf8").split(" ")[0]) / 1e9;
  } catch {
    return processorTime();
  }
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
  let before = threadTime();
  let first: number | null = null;
  let longest = 0;
  let longestAt = 0;
  let over = 0;
  let half = 0;
  let evaluations = 0;
  for (let spent = 0; spent < seconds; ) {
    const { value, done } = search.next();
    spent = processorTime() - start;
    const now = threadTime();
    if (done) break;
    if (value !== BREATH && value.plan !== null) first ??= spent;
    if (now - before > longest) {
      longest = now - before;
      longestAt = spent;
    }
    if (now - before > PROMISED) over++;
    if (value !== BREATH) evaluations = value.evaluations;
    if (spent < seconds / 2) half = evaluations;
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
  ...[0, 13].map((at): [string, LayProblem] => {
    const bag = readDataset(bagJobs, "bagJobs.ts").instances[at]!;
    return [bag.name, benchProblem(bag, false)];
  }),
  ["repeats", problemOf(repeatJob(1))],
  ["skin", problemOf(skinJobs(1).skin)],
  ...[5, 50, 300].map((count): [string, LayProblem] => [`flaws ${count}`, problemOf(flawedSkin(count))]),
];
for (const [name, problem] of jobs) if (name.startsWith(only)) measure(name, problem);

/** Stops of the pool: after so many seconds, each on every job. */
const STOPS = [0.3, 0.7, 1.3];

/**
 * Times by the clock from `stop` until the last plan is there, and until both workers are free: a search for nothing,
 * begun at once, has come back from both.
 */
async function measureStops(): Promise<void> {
  const entry = new URL("../../dist/worker/nodeWorkerEntry.js", import.meta.url);
  const pool = nodePool(2, entry);
  const untilPlan: number[] = [];
  const untilFree: number[] = [];
  const wish = { mode: "free", seed: 1, evaluations: Infinity } as const;
  for (const [, problem] of jobs) {
    for (const delay of STOPS) {
      let planned: () => void = () => {};
      const first = new Promise<void>((resolve) => {
        planned = resolve;
      });
      const running = pool.search({ ...wish, problem }, () => planned());
      await first;
      await after(1000 * delay);
      const told = performance.now();
      running.stop();
      await running.result;
      untilPlan.push(performance.now() - told);
      await pool.search({ ...wish, problem: { ...problem, pieces: [] } }).result;
      untilFree.push(performance.now() - told);
    }
  }
  pool.close();
  const told = (times: number[]): string => {
    const sorted = [...times].sort((a, b) => a - b);
    return `median ${sorted[sorted.length >> 1]!.toFixed(0)}, longest ${sorted.at(-1)!.toFixed(0)} ms`;
  };
  console.log(
    `two workers stopped ${untilPlan.length} times, by the clock: last plan ${told(untilPlan)}; both free ${told(untilFree)}`,
  );
}

if (only === "" || only === "stop") await measureStops();

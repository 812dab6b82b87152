// `npx tsx tests/bench/orderParts.ts`: what the parts of laying an order take, in processor time of one core (the third of
// three runs, when all is warm), and what goes through the store and onto the disk: the figures of tests/tools/orderModel.ts.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { LayTask } from "../../src/cli/batch/layTask.ts";
import { fontBytes } from "../../src/cli/lay/fonts.ts";
import type { FoundPlans, SentLay } from "../../src/cli/queue/wire.ts";
import { judgeCloth } from "../../src/core/job/laidCloth.ts";
import { planDocument } from "../../src/core/job/planDocument/writePlan.ts";
import { readJob } from "../../src/core/job/projectJob.ts";
import type { LayPlan } from "../../src/core/lay/problem/layProblem.ts";
import { planFiles } from "../../src/export/planFiles.ts";
import { nodePool } from "../../src/worker/nodePool.ts";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const fixture = (name: string): string => readFileSync(`${root}fixtures/${name}.json`, "utf8");

function clock(): () => number {
  const start = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(start);
    return Math.round((user + system) / 1000);
  };
}

async function parts(text: string, effort: number): Promise<Record<string, number>> {
  const reading = clock();
  const read = readJob(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const readMs = reading();
  const job = read.value;
  const searching = clock();
  const pool = nodePool(1);
  const plans: LayPlan[] = [];
  for (const { problem } of job.lays)
    plans.push((await pool.search({ problem, mode: "free", seed: 1, evaluations: 1e6 * effort }).result).plan);
  pool.close();
  const searchMs = searching();
  const drawing = clock();
  const lays = job.lays.map((lay, i) => judgeCloth({ ...lay, plan: plans[i]! }, "free", job.project));
  const { pieces, straps, project } = job;
  const { files } = await planFiles({
    project,
    pieces,
    lays,
    mats: new Map(),
    fonts: fontBytes(),
    straps,
    language: "en",
  });
  const document = JSON.stringify(planDocument(job, lays, 1));
  const drawMs = drawing();
  const filesBytes = files.reduce((sum, { data }) => sum + Buffer.byteLength(data), document.length);
  const [name, folder] = ["H-101", "orders/h-101"];
  const searched = { evaluations: 1e6 * effort, seed: 1, mode: "free" } as const;
  const task: LayTask = {
    folder,
    orders: [{ name, folder, text }],
    withheld: {},
    effort: searched,
    language: "en",
  };
  const sent: SentLay = { version: "0.2.0", task };
  const found: FoundPlans = { version: "0.2.0", worker: "cutting-table-12345-abcd", plans };
  return {
    readMs,
    searchMs,
    drawMs,
    taskBytes: Buffer.byteLength(JSON.stringify(sent)),
    plansBytes: Buffer.byteLength(JSON.stringify(found)),
    filesBytes,
  };
}

for (const [name, text, effort] of [
  ["pouch, effort 0.2", JSON.stringify(POUCH_TEMPLATE), 0.2],
  ["crossbody, effort 0.2", fixture("harbour-crossbody"), 0.2],
] as const) {
  await parts(text, effort);
  await parts(text, effort);
  console.log(name, await parts(text, effort));
}

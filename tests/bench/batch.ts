// `npm run bench:batch -- [--orders N] [--effort N] [--empty N] [--only cores|workers]`: a batch of generated small orders
// (1,000 unless told), each laid by itself, from what is built: on one core and on two, then over a real Redis with one,
// two and four worker processes of one thread each, their plans drawn by two threads of the batch; and N lays (1,000) that
// are nothing to do, for what the queue itself takes. The first runs are held to their cores by `taskset` where it is
// there. Prints the rows of the table in docs/reference/benchmarks.md: orders a second and speed-up by the clock,
// processor time, the share of two cores' speed that processor time allows, and the largest memory. About ten minutes on
// a machine of two cores with nothing else to do, which is what the clock's figures want. The share by processor time
// holds on a busy machine too: what one core took, over twice what the busier of both cores has to do at the least, which
// is half of all that was done, or the longest thread.
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import type { LaidTask, LayTask } from "../../src/cli/batch/layTask.ts";
import { connectQueue } from "../../src/cli/queue/connect.ts";
import { sendLays } from "../../src/cli/queue/sendLays.ts";
import { takeLays } from "../../src/cli/queue/takeLays.ts";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import { redisServer } from "../tools/redisServer.ts";
import { commandPath } from "../tools/systemPrograms.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
/** Tells on a stream of its own, as the process ends, what it took. */
const TELLS = `data:text/javascript,${encodeURIComponent(
  'import { writeSync } from "node:fs"; import { isMainThread } from "node:worker_threads"; if (isMainThread) process.on("exit", () => writeSync(3, JSON.stringify(process.resourceUsage())));',
)}`;

const { values } = parseArgs({
  options: {
    orders: { type: "string", default: "1000" },
    effort: { type: "string", default: "0.2" },
    empty: { type: "string", default: "1000" },
    only: { type: "string" },
  },
});
const [orders, empty] = [Number(values.orders), Number(values.empty)];
const folder = mkdtempSync(join(tmpdir(), "laywright-bench-"));
const [template, table] = [join(folder, "pouch.json"), join(folder, "orders.csv")];

/** What a process took. */
interface Took {
  readonly seconds: number;
  readonly megabytes: number;
  /** Of its longest thread, as last seen; 0 where the system does not tell. */
  readonly longest: number;
}

interface Running {
  readonly child: ChildProcess;
  readonly ended: Promise<Took>;
}

function program(cores: string | null, ...words: readonly string[]): Running {
  const pinned = cores !== null && commandPath("taskset") !== null ? ["taskset", "-c", cores] : [];
  const [name, ...rest] = [...pinned, process.execPath, "--import", TELLS, "dist/cli/main.js", ...words];
  const child = spawn(name!, rest, { cwd: root, stdio: ["ignore", "ignore", "pipe", "pipe"] });
  let told = "";
  let said = "";
  child.stderr!.on("data", (data) => {
    said += data;
  });
  (child.stdio[3] as NodeJS.ReadableStream).on("data", (data) => {
    told += data;
  });
  const threads = new Map<string, number>();
  const timer = setInterval(() => seeThreads(child.pid!, threads), 100);
  const ended = once(child, "close").then(([code]) => {
    clearInterval(timer);
    if (code !== 0) throw new Error(`${words[0]} ended with ${code}: ${said}`);
    const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(told);
    const longest = Math.max(0, ...threads.values());
    return { seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: Math.round(maxRSS / 1024), longest };
  });
  return { child, ended };
}

/** Processor time of each thread of a process so far, s, by its number; threads that ended keep their last. Linux only. */
function seeThreads(pid: number, threads: Map<string, number>): void {
  try {
    for (const id of readdirSync(`/proc/${pid}/task`)) {
      // proc(5): after the name in brackets, fields 14 and 15 of all, in hundredths of a second.
      const fields = readFileSync(`/proc/${pid}/task/${id}/stat`, "utf8").split(") ")[1]!.split(" ");
      threads.set(id, (Number(fields[11]) + Number(fields[12])) / 100);
    }
  } catch {
    // It has just ended, or the system has no such folder.
  }
}

/** The batch with more words; the clock's seconds, and what it took. */
async function batch(cores: string | null, ...more: readonly string[]): Promise<Took & { readonly clock: number }> {
  const out = mkdtempSync(join(folder, "out-"));
  const start = performance.now();
  const took = await program(cores, "batch", template, table, "--out", out, "--effort", values.effort, ...more)
    .ended;
  return { ...took, clock: (performance.now() - start) / 1000 };
}

const HEADS = ["", "orders a second", "speed-up", "processor time an order", "share by processor time", "memory"];

function tell(
  what: string,
  clock: number,
  alone: number,
  batch: Took,
  workers: readonly Took[] = [],
  share: number | null = null,
): void {
  const seconds = [batch, ...workers].reduce((sum, took) => sum + took.seconds, 0);
  const memory = [batch, ...workers].map(({ megabytes }) => `${megabytes}`).join(" + ");
  const cells = [
    what,
    (orders / clock).toFixed(2),
    (alone / clock).toFixed(2),
    `${((1000 * seconds) / orders).toFixed(0)} ms`,
    share === null ? "" : share.toFixed(2),
    `${memory} MB`,
  ];
  console.log(`| ${cells.join(" | ")} |`);
}

async function onCores(): Promise<void> {
  const one = await batch("0", "--threads", "1");
  tell("1 core", one.clock, one.clock, one);
  const two = await batch("0,1", "--threads", "2");
  const share = two.longest === 0 ? null : one.seconds / (2 * Math.max(two.seconds / 2, two.longest));
  tell("2 cores", two.clock, one.clock, two, [], share);
}

async function onWorkers(): Promise<void> {
  let alone = 0;
  for (const count of [1, 2, 4]) {
    const redis = await redisServer();
    const words = ["worker", "--queue", redis.url, "--threads", "1"];
    const workers = Array.from({ length: count }, () => program(null, ...words));
    try {
      // Started and waiting before the clock runs.
      await Promise.all(workers.map(({ child }) => once(child.stderr!, "data")));
      const took = await batch(null, "--queue", redis.url, "--threads", "2");
      if (count === 1) alone = took.clock;
      for (const { child } of workers) child.kill("SIGTERM");
      const each = await Promise.all(workers.map(({ ended }) => ended));
      tell(`${count} worker${count === 1 ? "" : "s"} and the batch`, took.clock, alone, took, each);
    } finally {
      for (const { child } of workers) if (child.exitCode === null) child.kill("SIGKILL");
      await redis.close();
    }
  }
}

/** Both ends of the queue in this process, with lays of the usual size and nothing to search or to draw. */
async function emptyLays(): Promise<void> {
  const redis = await redisServer();
  const store = await connectQueue(redis.url, "bench");
  const taking = takeLays(store, { threads: 8, silentMs: 30_000, search: async () => [], told: () => {} });
  const text = JSON.stringify(POUCH_TEMPLATE);
  function* tasks(): Generator<LayTask> {
    for (let i = 0; i < empty; i++) {
      const at = `orders/${i}`;
      const effort = { evaluations: 1, seed: 1, mode: "free" } as const;
      yield { folder: at, orders: [{ name: `${i}`, folder: at, text }], withheld: {}, effort, language: "en" };
    }
  }
  const wish = {
    keyOf: ({ folder }: LayTask) => folder,
    priorityOf: () => 1,
    draw: async ({ folder }: LayTask) => ({ folder }) as LaidTask,
    atOnce: 64,
  };
  let laid = 0;
  const start = performance.now();
  const before = process.cpuUsage();
  await sendLays(tasks(), store, wish, (_, result) => {
    if ("laid" in result) laid++;
  }).ended;
  const clock = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  if (laid !== empty) throw new Error(`${laid} of ${empty} empty lays came back`);
  console.log(
    `${empty} empty lays: ${(clock / empty).toFixed(2)} ms each by the clock, ${((user + system) / 1000 / empty).toFixed(2)} ms of processor time, both ends together`,
  );
  await taking.close();
  store.close();
  await redis.close();
}

try {
  writeFileSync(template, JSON.stringify(POUCH_TEMPLATE));
  const rows = Array.from({ length: orders }, (_, i) => `${i},${90 + (i % 97)},${12 + (i % 9)} mm`);
  writeFileSync(table, ["order,height,loop.width", ...rows].join("\n"));
  console.log(`${orders} orders, effort ${values.effort}; load before: ${loadavg()[0]!.toFixed(1)}`);
  for (const row of [HEADS, HEADS.map((_, i) => (i === 0 ? "---" : "---:"))]) console.log(`| ${row.join(" | ")} |`);
  if (orders > 0 && values.only !== "workers") await onCores();
  if (orders > 0 && values.only !== "cores") await onWorkers();
  if (empty > 0) await emptyLays();
} finally {
  rmSync(folder, { recursive: true, force: true });
}

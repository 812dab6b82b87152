// What can go wrong between machines, over a real Redis: every lay ends once, right, or given up with its reasons.
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test, vi } from "vitest";
import { type LaidTask, type LayTask, refusalOfPlans, searchLayTask } from "../../src/cli/batch/layTask.ts";
import type { TaskResult } from "../../src/cli/batch/runTasks.ts";
import { programVersion } from "../../src/cli/command.ts";
import { connectQueue, type QueueStore } from "../../src/cli/queue/connect.ts";
import { announce, strangers } from "../../src/cli/queue/presence.ts";
import { sendLays } from "../../src/cli/queue/sendLays.ts";
import { type TakeWish, type TakingLays, takeLays } from "../../src/cli/queue/takeLays.ts";
import type { LayPlan } from "../../src/core/lay/problem/layProblem.ts";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import { bytesIn, freshFolder } from "../tools/programs.ts";
import { cutLine, type RedisServer, redisServer } from "../tools/redisServer.ts";
import { runCli } from "../tools/runCli.ts";
import { type WorkerProcess, workerProcess } from "../tools/workerProcess.ts";

// Two of them start a process that reads the sources first.
vi.setConfig({ testTimeout: 240_000 });

let redis: RedisServer;
beforeAll(async () => {
  redis = await redisServer();
});
afterAll(() => redis.close());

const open: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
});

// A version for each test: their lays never meet.
let tests = 0;
const freshVersion = (): string => `test-${++tests}`;

async function storeOf(version: string, url = redis.url): Promise<QueueStore> {
  const store = await connectQueue(url, version);
  open.push(store.close);
  return store;
}

function taskOf(name: string, height: number | string = 100): LayTask {
  const measures = [{ ...POUCH_TEMPLATE.measures[0], length: height }];
  const folder = `orders/${name}`;
  return {
    folder,
    orders: [{ name, folder, text: JSON.stringify({ ...POUCH_TEMPLATE, measures }) }],
    withheld: {},
    effort: { evaluations: 1000, seed: 1, mode: "free" },
    language: "en",
  };
}

const TASKS = ["a", "b", "c", "d"].map((name, i) => taskOf(name, 90 + 10 * i));

/** Gives lays out; what each ended with, every time it did, with the plans that the checker here let through. */
async function ends(store: QueueStore, tasks: readonly LayTask[]): Promise<Record<string, unknown[]>> {
  const ended: Record<string, unknown[]> = Object.fromEntries(tasks.map(({ folder }) => [folder, []]));
  const passed = new Map<string, readonly LayPlan[]>();
  const draw = async (task: LayTask, plans: readonly LayPlan[]) => {
    const refused = await refusalOfPlans(task, plans);
    if (refused.length > 0) return { refused };
    passed.set(task.folder, plans);
    return { folder: task.folder } as LaidTask;
  };
  const told = ({ folder }: LayTask, result: TaskResult): void => {
    ended[folder]!.push("laid" in result ? passed.get(folder) : result);
  };
  const wish = { keyOf: ({ folder }: LayTask) => folder, priorityOf: () => 1, draw, atOnce: 2, restMs: 100 };
  await sendLays(tasks, store, wish, told).ended;
  return ended;
}

/** What a batch without machines comes to. */
async function right(tasks: readonly LayTask[]): Promise<Record<string, unknown[]>> {
  return Object.fromEntries(
    await Promise.all(tasks.map(async (task) => [task.folder, [await searchLayTask(task)]] as [string, unknown[]])),
  );
}

function worker(store: QueueStore, wish: Partial<TakeWish> = {}, name?: string): TakingLays {
  const usual = { threads: 2, silentMs: 15_000, search: searchLayTask, told: () => {} };
  const taking = takeLays(store, { ...usual, ...wish }, name);
  open.push(() => Promise.race([taking.close(), new Promise((resolve) => setTimeout(resolve, 500))]));
  return taking;
}

const processOf = (version: string, what: "hang" | "lay", clockMs = 0): WorkerProcess => {
  const started = workerProcess(redis.url, version, what, clockMs);
  open.push(started.end);
  return started;
};

/** Something that happens once and can be waited for. */
function signal(): { readonly given: Promise<void>; give(): void } {
  let give = (): void => {};
  const given = new Promise<void>((resolve) => {
    give = resolve;
  });
  return { given, give };
}

test("a worker killed in the middle of a lay: another takes it over", async () => {
  const version = freshVersion();
  const store = await storeOf(version);
  const { child, said } = processOf(version, "hang");
  const ended = ends(store, TASKS);
  await said(/^taken/u);
  child.kill("SIGKILL");
  worker(store, { silentMs: 3000 });
  expect(await ended).toEqual(await right(TASKS));
});

test("the store killed and started again from its disk: nothing is lost and nothing done twice", async () => {
  const store = await storeOf(freshVersion());
  const [taken, restarted] = [signal(), signal()];
  const search = async (task: LayTask) => {
    taken.give();
    await restarted.given;
    return searchLayTask(task);
  };
  worker(store, { search });
  const ended = ends(store, TASKS);
  await taken.given;
  await redis.kill();
  await redis.start();
  restarted.give();
  expect(await ended).toEqual(await right(TASKS));
});

test("the network cut for longer than a worker may be silent, and mended", async () => {
  const version = freshVersion();
  const line = await cutLine(redis.port);
  open.push(line.close);
  const url = `redis://127.0.0.1:${line.port}`;
  const [near, far] = [await storeOf(version, url), await storeOf(version, url)];
  const [taken, mended] = [signal(), signal()];
  const search = async (task: LayTask) => {
    taken.give();
    await mended.given;
    return searchLayTask(task);
  };
  worker(far, { search, silentMs: 4000 });
  const ended = ends(near, TASKS);
  await taken.given;
  line.cut();
  await new Promise((resolve) => setTimeout(resolve, 4500));
  line.mend();
  mended.give();
  expect(await ended).toEqual(await right(TASKS));
});

test("a lay that two batches want, and one that a worker finishes after it was taken from it, ends once for each", async () => {
  const store = await storeOf(freshVersion());
  const [taken, late] = [signal(), signal()];
  let searches = 0;
  const slow = async (task: LayTask) => {
    searches++;
    taken.give();
    await late.given;
    return searchLayTask(task);
  };
  const overtaken = worker(store, { search: slow, threads: 1 });
  const one = [TASKS[0]!];
  const [first, second] = [ends(store, one), ends(store, one)];
  await taken.given;
  // As when the store has not heard of the worker for too long.
  await store.redis.del(`${store.queue.toKey(`lay-${one[0]!.folder}`)}:lock`);
  worker(store, { threads: 1, silentMs: 3000 });
  const [byFirst, bySecond] = [await first, await second];
  late.give();
  await overtaken.close();
  expect(byFirst).toEqual(await right(one));
  expect(bySecond).toEqual(await right(one));
  expect(searches).toBe(1);
});

test("a lay that no worker can do is given up with the reason of each try; the others are laid", async () => {
  const store = await storeOf(freshVersion());
  worker(store);
  const poison = taskOf("poison", "no length");
  const ended = await ends(store, [poison, ...TASKS]);
  const { [poison.folder]: given, ...others } = ended;
  const reasons = (given as [{ givenUp: string[] }])[0].givenUp;
  expect(given).toHaveLength(1);
  expect(reasons).toHaveLength(3);
  for (const reason of reasons) expect(reason).toContain("no length");
  expect(others).toEqual(await right(TASKS));
});

const askew = (plans: readonly LayPlan[]): LayPlan[] =>
  plans.map((plan) => ({ ...plan, placements: plan.placements.map((one) => ({ ...one, y: one.y / 2 })) }));
const empty = (plans: readonly LayPlan[]): LayPlan[] =>
  plans.map((plan) => ({
    ...plan,
    placements: [],
    uses: plan.uses.map((use) => ({ ...use, usedLength: 0, bound: null })),
    unplaced: [...new Set(plan.placements.map(({ pieceId }) => pieceId))].map((pieceId) => ({
      pieceId,
      count: plan.placements.filter((one) => one.pieceId === pieceId).length,
      reason: "stock-used-up" as const,
    })),
  }));

test.each([
  ["pieces over each other", askew, /the plan of liar is wrong: .*overlap/u],
  ["every piece left out", empty, /the plan of liar is wrong: it leaves out pieces that have room/u],
  [
    "something else altogether",
    () => [{ plan: "none" }] as unknown as LayPlan[],
    /what liar sent back is no plan/u,
  ],
])("a worker that sends back %s is never believed", async (_, spoil, reason) => {
  const store = await storeOf(freshVersion());
  const told = new Set<string>();
  // Wrong each time for the first lay, once for the others.
  const search = async (task: LayTask) => {
    const isWrong = task.folder === TASKS[0]!.folder || !told.has(task.folder);
    told.add(task.folder);
    const plans = await searchLayTask(task);
    return isWrong ? spoil(plans) : plans;
  };
  worker(store, { search }, "liar");
  const { [TASKS[0]!.folder]: refused, ...others } = await ends(store, TASKS);
  expect(refused).toEqual([{ givenUp: [1, 2, 3].map(() => expect.stringMatching(reason)) }]);
  expect(others).toEqual(await right(TASKS.slice(1)));
});

test("the batch's clock ten minutes slow, the worker's ten minutes fast, and a first try that fails: nobody waits", async () => {
  const version = freshVersion();
  const now = Date.now.bind(Date);
  const clock = vi.spyOn(Date, "now").mockImplementation(() => now() - 600_000);
  open.push(() => clock.mockRestore());
  const store = await storeOf(version);
  const { said } = processOf(version, "lay", 600_000);
  await said(/^ready/u);
  const two = TASKS.slice(0, 2);
  expect(await ends(store, two)).toEqual(await right(two));
});

test("versions that differ refuse each other and say so", async () => {
  const [ours, theirs] = [await storeOf("1.0.0"), await storeOf("2.0.0")];
  const taken: string[] = [];
  const search = async (task: LayTask) => {
    taken.push(task.folder);
    return searchLayTask(task);
  };
  worker(theirs, { search });
  open.push(announce(theirs, "workers", "theirs", 1));
  const one = [TASKS[0]!];
  const ended = ends(ours, one);
  // A lay of another version that somebody put into the queue all the same.
  const data = { version: "1.0.0", task: one[0] };
  const job = await theirs.queue.add("lay", data, { jobId: "lay-astray" });
  while (!(await job.isFailed())) await new Promise((resolve) => setTimeout(resolve, 20));
  expect((await theirs.queue.getJob("lay-astray"))!.failedReason).toContain("1.0.0");
  expect(await strangers(ours, "workers")).toEqual(["2.0.0"]);
  expect(await strangers(theirs, "workers")).toEqual([]);
  worker(ours);
  expect(await ended).toEqual(await right(one));
  expect(taken).toEqual([]);
});

test("batch with a queue writes the bytes that it writes alone", async () => {
  const folder = freshFolder();
  const [template, table] = [join(folder, "pouch.json"), join(folder, "orders.csv")];
  writeFileSync(template, JSON.stringify(POUCH_TEMPLATE));
  writeFileSync(table, "order,due,height\n1,2027-03-12,\n2,2027-03-11,14 cm\n3,2027-03-11,5000 m");
  const words = ["batch", template, table, "--effort", "0.01", "--out"];
  const store = await storeOf(programVersion());
  open.push(announce(store, "workers", worker(store).name, 2));
  const queued = await runCli(...words, join(folder, "queued"), "--queue", redis.url);
  const alone = await runCli(...words, join(folder, "alone"));
  expect({ ...queued, out: "" }).toEqual({ ...alone, out: "" });
  expect(queued.code).toBe(1);
  expect(queued.out).toContain("2 of 3 orders laid, in 2 lays.");
  expect(bytesIn(join(folder, "queued"))).toEqual(bytesIn(join(folder, "alone")));
  rmSync(folder, { recursive: true });
});

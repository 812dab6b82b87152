// One large lay on many machines, over a real Redis.
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { searchLayTask } from "../../src/cli/batch/layTask.ts";
import { connectQueue, type QueueStore } from "../../src/cli/queue/connect.ts";
import { islandPool } from "../../src/cli/queue/islandPool.ts";
import { announce } from "../../src/cli/queue/presence.ts";
import { takeLays } from "../../src/cli/queue/takeLays.ts";
import { readJob } from "../../src/core/job/projectJob.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import type { LayPlan } from "../../src/core/lay/problem/layProblem.ts";
import { lengthUsed } from "../../src/core/lay/problem/planSums.ts";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import { type RedisServer, redisServer } from "../tools/redisServer.ts";

vi.setConfig({ testTimeout: 240_000 });

let redis: RedisServer;
let store: QueueStore;
beforeAll(async () => {
  redis = await redisServer();
  store = await connectQueue(redis.url, "islands");
});
afterAll(async () => {
  store.close();
  await redis.close();
});

// Round panels: no length of theirs is proven, so that only the budget ends a search.
const ROUND = { ...POUCH_TEMPLATE.panels[0], count: 9, shape: { kind: "circle", diameter: 130 } };
const textOf = (panels: object[]): string => JSON.stringify({ ...POUCH_TEMPLATE, panels });

function projectOf(text: string) {
  const read = readJob(text);
  if (!read.ok) throw new Error("the project has problems");
  const [lay] = read.value.lays;
  return { problem: lay!.problem, project: { text, materialIds: ["canvas"], language: "en" as const } };
}

test("islands go on from the best plan there is; a wrong one never comes through; the best that passed wins", async () => {
  const { problem, project } = projectOf(textOf([ROUND]));
  const told: (number | null)[] = [];
  let stretches = 0;
  const taking = takeLays(store, {
    threads: 2,
    silentMs: 15_000,
    search: async (task) => {
      const from = task.island!.from;
      told.push(from === null ? null : lengthUsed(from));
      const [plan] = await searchLayTask(task);
      // Each third worker's plan would be the shortest of all, were it true.
      if (++stretches % 3 === 0)
        return [{ ...plan!, placements: plan!.placements.map((one) => ({ ...one, x: 0 })) }];
      return [plan!];
    },
    told: () => {},
  });
  const forget = announce(store, "workers", taking.name, 2);
  const pool = islandPool(store, project);
  const found: LayPlan[] = [];
  const wish = { problem, mode: "free", seed: 1, evaluations: 700_000 } as const;
  const { plan, evaluations } = await pool.search(wish, (better) => found.push(better.plan)).result;
  pool.close();
  forget();
  await taking.close();
  expect(evaluations).toBeGreaterThanOrEqual(700_000);
  expect(found.length).toBeGreaterThan(0);
  for (const each of [...found, plan]) expect(checkPlan(problem, each)).toEqual([]);
  const lengths = found.map(lengthUsed);
  expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
  expect(lengthUsed(plan)).toBe(lengths.at(-1));
  // The first islands begin with nothing, later ones with the best that had passed until then.
  expect(told[0]).toBeNull();
  const later = told.filter((length) => length !== null);
  expect(later.length).toBeGreaterThan(0);
  expect(lengths).toEqual(expect.arrayContaining(later));
});

test("a search whose length is proven ends by itself, one that is stopped with its best plan", async () => {
  const taking = takeLays(store, { threads: 1, silentMs: 15_000, search: searchLayTask, told: () => {} });
  const proven = projectOf(textOf(POUCH_TEMPLATE.panels));
  const pool = islandPool(store, proven.project);
  const search = { mode: "free", seed: 1, evaluations: Infinity } as const;
  const { plan } = await pool.search({ problem: proven.problem, ...search }).result;
  pool.close();
  const [roll] = plan.uses.filter(({ stockId }) => stockId === "roll");
  expect(roll!.usedLength).toBeCloseTo(roll!.bound!, 9);
  const open = projectOf(textOf([ROUND]));
  const again = islandPool(store, open.project);
  const running = again.search({ problem: open.problem, ...search }, () => running.stop());
  expect(checkPlan(open.problem, (await running.result).plan)).toEqual([]);
  again.close();
  await taking.close();
});

import { expect, test } from "vitest";
import { rectangleRing, solid } from "../core/geometry/ring.ts";
import { checkPlan } from "../core/lay/check/checkPlan.ts";
import type { LayPlan, LayProblem } from "../core/lay/problem/layProblem.ts";
import { loopback } from "./loopback.ts";
import { nodePool, threadsHere } from "./nodePool.ts";
import type { FromWorker, ToWorker, WorkerLine } from "./protocol.ts";
import { searchPool } from "./searchPool.ts";
import { serveSearches } from "./serveSearches.ts";

/** A job that is not proven within the budgets used here. */
const problem: LayProblem = {
  materialId: "canvas",
  pieces: Array.from({ length: 14 }, (_, i) => ({
    id: `p${i}`,
    outline: solid(rectangleRing(0, 0, 37 + ((i * 53) % 71), 23 + ((i * 31) % 47))),
    count: 3,
    orientations: [{ turnDeg: 0, mirrored: false }],
    freeTurn: false,
  })),
  stocks: [{ kind: "roll", id: "bolt", width: 151, length: null, flaws: [] }],
  gap: 0,
  margin: 0,
  pinned: [],
};
const wish = (evaluations: number, seed = 3) => ({ problem, mode: "free" as const, seed, evaluations });
const loops = (k: number) => searchPool(Array.from({ length: k }, () => loopback(setImmediate)));

test("the same wish and number of workers give the same plan", async () => {
  for (const k of [1, 3]) {
    const pool = loops(k);
    const first = await pool.search(wish(2_500_000)).result;
    const second = await pool.search(wish(2_500_000)).result;
    pool.close();
    expect(second).toEqual(first);
    expect(checkPlan(problem, first.plan)).toEqual([]);
    expect(first.plan.seed).toBe(3);
  }
});

test("better plans are told at once, each better than the one before", async () => {
  const pool = loops(2);
  const lengths: number[] = [];
  const { plan } = await pool.search(wish(4_000_000), (found) => {
    lengths.push(found.plan.uses[0].usedLength);
  }).result;
  pool.close();
  expect(lengths.length).toBeGreaterThan(1);
  expect([...lengths].sort((a, b) => b - a)).toEqual(lengths);
  expect(plan.uses[0].usedLength).toBeLessThanOrEqual(Math.min(...lengths));
});

test("a search without end is stopped at once and keeps its best plan", async () => {
  let turns = 0;
  const counted = (next: () => void): void => {
    turns++;
    setImmediate(next);
  };
  const pool = searchPool([loopback(counted), loopback(counted)]);
  let last: LayPlan | null = null;
  let better = 0;
  let tell = () => {};
  const found = new Promise<void>((resolve) => {
    tell = resolve;
  });
  const running = pool.search(wish(Infinity), ({ plan }) => {
    last = plan;
    if (++better === 2) tell();
  });
  await found;
  const before = turns;
  running.stop();
  const { plan } = await running.result;
  // Counted in turns, not by the clock: each worker may end the one it is in.
  expect(turns - before).toBeLessThanOrEqual(2);
  pool.close();
  expect(plan.placements).toEqual(last!.placements);
  running.stop();
});

test("a search that is stopped before its first plan waits for that", async () => {
  const pool = loops(1);
  const running = pool.search(wish(Infinity));
  running.stop();
  expect(checkPlan(problem, (await running.result).plan)).toEqual([]);
  pool.close();
});

test("threads find the plan that the same workers find in one thread", async () => {
  const here = loops(2);
  // The sources themselves, not what was built of them some time ago.
  const threads = nodePool(2, new URL("../../tests/tools/workerFromSource.mjs", import.meta.url));
  const [a, b] = [await here.search(wish(3_000_000)).result, await threads.search(wish(3_000_000)).result];
  here.close();
  threads.close();
  expect(b).toEqual(a);
});

test("a job of many corners gives the same plan with the same two workers", async () => {
  const wave = (k: number): Float64Array =>
    Float64Array.from(
      Array.from({ length: 90 }, (_, i) => {
        const angle = (i / 90) * 2 * Math.PI;
        const radius = 60 + 8 * k + 9 * Math.sin((3 + k) * angle);
        return [radius * Math.cos(angle), (0.5 + 0.1 * k) * radius * Math.sin(angle)];
      }).flat(),
    );
  const pieces = Array.from({ length: 5 }, (_, k) => {
    const orientations = [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false }));
    return { id: `wave-${k}`, outline: solid(wave(k)), count: 4, orientations, freeTurn: false };
  });
  const waves = {
    ...wish(600_000),
    problem: { ...problem, pieces, stocks: [{ ...problem.stocks[0]!, width: 420 }] },
  };
  const pool = loops(2);
  const first = await pool.search(waves).result;
  const second = await pool.search(waves).result;
  pool.close();
  expect(second).toEqual(first);
  expect(checkPlan(waves.problem, first.plan)).toEqual([]);
});

test("as many threads as the machine has cores, one fewer where there are more than two", () => {
  const here = new URL(import.meta.url);
  expect([1, 2, 3, 8].map((cores) => threadsHere(cores, here))).toEqual([1, 2, 2, 7]);
  // The sources have no compiled worker.
  expect(threadsHere(8, new URL("./nobody.js", import.meta.url))).toBe(1);
});

test("a plan to go on from is heard at the end of the first turn, not lost at a breath before it", async () => {
  const pool = loops(1);
  const { plan } = await pool.search(wish(4_000_000)).result;
  pool.close();
  const waiting: (() => void)[] = [];
  const told: number[] = [];
  let send: (message: ToWorker) => void = () => {};
  const line = {
    send: (message: FromWorker) => {
      if (message.kind === "plan") told.push(message.plan.uses[0]!.usedLength);
    },
    listen: (hear: (message: ToWorker) => void) => {
      send = hear;
    },
  };
  serveSearches(line, (next) => waiting.push(next));
  send({ kind: "start", order: 1, search: { ...wish(Infinity, 8), meets: false, from: plan } });
  for (let i = 0; i < 60; i++) waiting.shift()?.();
  // Its own first plan it tells at once; after that only what is shorter than the plan it was given.
  expect(told.length).toBeGreaterThan(0);
  expect(told.slice(1).filter((length) => length >= plan.uses[0]!.usedLength)).toEqual([]);
});

/** A worker whose next steps wait until they are asked for. */
function steppedWorker(): WorkerLine & { step(): boolean } {
  const waiting: (() => void)[] = [];
  const line = loopback((next) => waiting.push(next));
  return {
    ...line,
    step: () => {
      const next = waiting.shift();
      next?.();
      return next !== undefined;
    },
  };
}

test("workers of any speed give the same plan, and the quick ones wait for the slow ones at last", async () => {
  const plans: LayPlan[] = [];
  for (const slow of [0, 1]) {
    const workers = [steppedWorker(), steppedWorker()];
    const pool = searchPool(workers);
    let result: LayPlan | null = null;
    void pool.search(wish(2_500_000)).result.then(({ plan }) => {
      result = plan;
    });
    // As far as the quick one gets by itself, then one step of the slow one, and so on.
    while (result === null) {
      let steps = 0;
      while (workers[1 - slow]!.step()) steps++;
      expect(steps).toBeLessThan(1000);
      workers[slow]!.step();
      await Promise.resolve();
    }
    plans.push(result);
    pool.close();
  }
  expect(plans[1]).toEqual(plans[0]);
});

import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { LayTask } from "../batch/layTask.ts";
import type { QueueStore } from "./connect.ts";
import { sendLays } from "./sendLays.ts";
import type { FoundPlans } from "./wire.ts";

const FOUND: FoundPlans = { version: "1", worker: "bench", plans: [] };

/** A store whose workers have every lay done the moment it is given out. */
function quickStore(): QueueStore {
  const done = new Set<string>();
  const redis = {
    zmscore: async (key: string, ...ids: (string | string[])[]) =>
      ids.flat().map((id) => (key === "completed" && done.has(id) ? "1" : null)),
    hget: async () => JSON.stringify(FOUND),
    exists: async () => 1,
  };
  const queue = {
    toKey: (name: string) => name,
    addBulk: async (jobs: { opts: { jobId: string } }[]) => {
      for (const { opts } of jobs) done.add(opts.jobId);
    },
    remove: async () => 1,
  };
  return { redis, queue, version: "1" } as unknown as QueueStore;
}

function tasks(count: number): LayTask[] {
  const effort = { evaluations: 1, seed: 1, mode: "free" } as const;
  return Array.from({ length: count }, (_, i) => ({
    folder: `orders/${i}`,
    orders: [],
    withheld: {},
    effort,
    language: "en",
  }));
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test("plans that wait are drawn one after the other, without a rest between two", async () => {
  const drawn: string[] = [];
  let most = 0;
  let under = 0;
  const sending = sendLays(
    tasks(20),
    quickStore(),
    {
      keyOf: ({ folder }) => folder,
      priorityOf: () => 1,
      draw: async ({ folder }) => {
        most = Math.max(most, ++under);
        for (let i = 0; i < 50; i++) await Promise.resolve();
        under--;
        return { folder };
      },
      atOnce: 2,
    },
    ({ folder }) => drawn.push(folder),
  );
  // No time passes: only what has come back is taken.
  await vi.advanceTimersByTimeAsync(0);
  expect(drawn).toHaveLength(20);
  expect(most).toBe(2);
  await vi.advanceTimersByTimeAsync(100);
  await sending.ended;
  expect(new Set(drawn).size).toBe(20);
});

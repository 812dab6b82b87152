import { expect, test } from "vitest";
import type { LayPlan } from "../core/lay/problem/layProblem.ts";
import type { SearchPool, SearchResult, SearchWish } from "../worker/searchPool.ts";
import { timedSearch } from "./timedSearch.ts";

const WISH: SearchWish = {
  problem: { materialId: "canvas", pieces: [], stocks: [], gap: 0, margin: 0, pinned: [] },
  mode: "free",
  seed: 1,
  evaluations: Infinity,
};

/** A pool that finds plans of these lengths at once and then nothing more until it is stopped. */
function stalledPool(lengths: readonly number[]): SearchPool {
  return {
    threads: 1,
    search: (_, onPlan) => {
      const plans = lengths.map((usedLength): LayPlan => {
        const uses = [{ stockId: "roll", usedLength, bound: null }];
        return { materialId: "canvas", placements: [], unplaced: [], uses, evaluations: 1, seed: 1 };
      });
      let settle: (result: SearchResult) => void = () => {};
      const result = new Promise<SearchResult>((resolve) => {
        settle = resolve;
      });
      const end = () => settle({ plan: plans.at(-1)!, evaluations: 1 });
      setImmediate(() => {
        for (const plan of plans) onPlan?.({ plan, evaluations: 1 });
      });
      return { result, spent: () => 1, stop: end };
    },
    close: () => {},
  };
}

test("a search to which nothing better comes ends with its best plan and says so", async () => {
  const heard: number[] = [];
  const found = await timedSearch(
    stalledPool([900, 800]),
    WISH,
    3600,
    ({ plan }) => heard.push(plan.uses[0]!.usedLength),
    0.01,
  );
  expect(heard).toEqual([900, 800]);
  expect(found.plan.uses[0]!.usedLength).toBe(800);
  expect(found.ended).toBe("quiet");
});

test("one that ends for another reason does not", async () => {
  const found = await timedSearch(stalledPool([900]), WISH, 0.01, undefined, 3600);
  expect(found.ended).toBe("time");
});

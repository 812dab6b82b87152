import type { SearchPool, SearchResult, SearchWish } from "../worker/searchPool.ts";

/** A search's result and how long it took. */
export interface TimedResult extends SearchResult {
  readonly seconds: number;
}

/** Searches until the budget is spent, nothing can be better, or the seconds are over. */
export async function timedSearch(
  pool: SearchPool,
  wish: SearchWish,
  seconds: number,
  onPlan?: (found: SearchResult) => void,
): Promise<TimedResult> {
  const start = performance.now();
  const running = pool.search(wish, onPlan);
  const timer = setTimeout(() => running.stop(), seconds * 1000);
  try {
    const result = await running.result;
    return { ...result, seconds: (performance.now() - start) / 1000 };
  } finally {
    clearTimeout(timer);
  }
}

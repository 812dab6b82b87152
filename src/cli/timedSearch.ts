import type { LayPlan } from "../core/lay/problem/layProblem.ts";
import type { SearchPool, SearchResult, SearchWish } from "../worker/searchPool.ts";

/** A search's result and how long it took. */
export interface TimedResult extends SearchResult {
  readonly seconds: number;
  /** The first plan and when it came. */
  readonly first: { readonly plan: LayPlan; readonly seconds: number };
  readonly ended: SearchEnd;
}

/** What ended a search: itself, its time, that nothing better had come for long, or a person. */
export type SearchEnd = "itself" | "time" | "quiet" | "person";

/**
 * Searches until the budget is spent, nothing can be better, the seconds are over, nothing better has come for
 * `quietSeconds`, or the person presses Ctrl-C.
 */
export async function timedSearch(
  pool: SearchPool,
  wish: SearchWish,
  seconds: number,
  onPlan?: (found: SearchResult) => void,
  quietSeconds: number = Infinity,
): Promise<TimedResult> {
  const start = performance.now();
  const since = (): number => (performance.now() - start) / 1000;
  let first: TimedResult["first"] | null = null;
  let ended: SearchEnd = "itself";
  let quiet: NodeJS.Timeout | undefined;
  const running = pool.search(wish, (found) => {
    first ??= { plan: found.plan, seconds: since() };
    if (quietSeconds < Infinity) {
      clearTimeout(quiet);
      quiet = setTimeout(() => end("quiet"), quietSeconds * 1000);
    }
    onPlan?.(found);
  });
  const end = (how: SearchEnd): void => {
    ended = how;
    running.stop();
  };
  const stop = (): void => end("person");
  const timer = setTimeout(() => end("time"), seconds * 1000);
  process.once("SIGINT", stop);
  try {
    const result = await running.result;
    const seconds = since();
    return { ...result, seconds, first: first ?? { plan: result.plan, seconds }, ended };
  } finally {
    clearTimeout(timer);
    clearTimeout(quiet);
    process.off("SIGINT", stop);
  }
}

/** Longest time between two looks at what the person does, ms. */
const LOOK_UP = 50;

/** The result of steps taken in this process; the terminal hears Ctrl-C between them. */
export async function attended<T>(steps: Generator<unknown, T, undefined>): Promise<T> {
  let looked = performance.now();
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (performance.now() - looked < LOOK_UP) continue;
    await new Promise(setImmediate);
    looked = performance.now();
  }
}

import type { LayPlan, LayProblem } from "../core/lay/problem/layProblem.ts";
import { isSettled } from "../core/lay/search/arrange/arrange.ts";
import { isBetterPlan } from "../core/lay/search/comparePlans.ts";
import type { CutMode } from "../core/lay/search/engine.ts";
import type { FromWorker, WorkerLine } from "./protocol.ts";

/** Seeds of the workers of one search are this far apart; the first has the seed itself. */
const SEED_STEP = 7_368_787;

/** What to search, and for how long. */
export interface SearchWish {
  readonly problem: LayProblem;
  readonly mode: CutMode;
  readonly seed: number;
  /** For all workers together; Infinity to search until stopped or proven. */
  readonly evaluations: number;
  /** A plan found elsewhere, from which all workers may go on; it is not itself told as found. */
  readonly from?: LayPlan | undefined;
}

/** What a search has found so far, or in the end. */
export interface SearchResult {
  readonly plan: LayPlan;
  readonly evaluations: number;
}

/** A search under way. */
export interface RunningSearch {
  /** The best plan, when the budget is spent, nothing can be better, or `stop` was called. Rejects on a bug of ours. */
  readonly result: Promise<SearchResult>;
  /** Placements tried so far, as the workers told last: a few tenths of a second old at most. */
  spent(): number;
  /** Ends the search with the best plan so far; before the first plan, waits for that. Takes effect at once. */
  stop(): void;
}

/** Workers that search together. */
export interface SearchPool {
  readonly threads: number;
  /** One search at a time: a new one stops the one before. `onPlan` hears of every better plan at once. */
  search(wish: SearchWish, onPlan?: (found: SearchResult) => void): RunningSearch;
  /** Ends all workers. */
  close(): void;
}

/**
 * A pool over the given workers. They search with different seeds; after equal numbers of turns the best plan that any
 * of them has (the first worker's on a tie) is handed to all, who hear it a set number of meetings later, so that none
 * has to wait for another's longer turns. A search that ends by its budget gives the same plan for the same wish and
 * number of workers. One that is stopped depends on when.
 */
export function searchPool(workers: readonly WorkerLine[]): SearchPool {
  let order = 0;
  let current: SharedSearch | null = null;
  for (const [index, worker] of workers.entries()) worker.listen((message) => current?.hear(index, message));
  return {
    threads: workers.length,
    search(wish, onPlan = () => {}) {
      current?.stop();
      current = sharedSearch(workers, wish, ++order, onPlan);
      return current;
    },
    close() {
      current?.stop();
      for (const worker of workers) worker.close();
    },
  };
}

interface SharedSearch extends RunningSearch {
  hear(index: number, message: FromWorker): void;
}

/** What a worker had found and spent at the end of an epoch. */
interface Standing {
  readonly best: LayPlan | null;
  readonly evaluations: number;
}

interface Member {
  best: LayPlan | null;
  evaluations: number;
  /** At the ends of epochs that not all workers have come to yet, the earliest first. */
  readonly met: Standing[];
  /** The newest plan of another that it was given. */
  handed: LayPlan | null;
  isDone: boolean;
}

function sharedSearch(
  workers: readonly WorkerLine[],
  wish: SearchWish,
  order: number,
  onPlan: (found: SearchResult) => void,
): SharedSearch {
  const { problem, mode, seed } = wish;
  const members = workers.map((): Member => ({ best: null, evaluations: 0, met: [], handed: null, isDone: false }));
  let best: LayPlan | null = null;
  let stopping = false;
  let over = false;
  let settle: (result: SearchResult) => void = () => {};
  let fail: (error: Error) => void = () => {};
  const result = new Promise<SearchResult>((resolve, reject) => {
    settle = resolve;
    fail = reject;
  });
  const spent = (): number => members.reduce((sum, member) => sum + member.evaluations, 0);
  const end = (plan: LayPlan, evaluations: number): void => {
    over = true;
    for (const worker of workers) worker.send({ kind: "stop", order });
    settle({ plan: { ...plan, seed }, evaluations });
  };

  /** What all had at the end of each epoch that all have come to, in turn, is handed to those who go on. */
  const meet = (): void => {
    while (!over && members.every(({ met, isDone }) => met.length > 0 || isDone)) {
      const isLast = members.every(({ met }) => met.length === 0);
      const standings = members.map((member): Standing => member.met.shift() ?? member);
      const shared = standings.reduce<LayPlan | null>(
        (chosen, { best }) => (best && isBetterPlan(problem, best, chosen) ? best : chosen),
        null,
      );
      if (isLast || (shared && isSettled(problem, shared))) {
        end(
          shared!,
          standings.reduce((sum, { evaluations }) => sum + evaluations, 0),
        );
        return;
      }
      for (const [index, member] of members.entries()) {
        if (member.isDone) continue;
        const isNews = shared !== member.handed && isBetterPlan(problem, shared!, standings[index]!.best);
        if (isNews) member.handed = shared;
        workers[index]!.send({ kind: "go", order, plan: isNews ? shared : null });
      }
    }
  };

  for (const [index, worker] of workers.entries()) {
    const evaluations = Math.ceil(wish.evaluations / workers.length);
    const meets = workers.length > 1;
    const search = { problem, mode, seed: seed + SEED_STEP * index, evaluations, meets, from: wish.from };
    worker.send({ kind: "start", order, search });
  }

  return {
    result,
    spent,
    stop() {
      if (over) return;
      if (best) end(best, spent());
      else stopping = true;
    },
    hear(index, message) {
      if (over || (message.order !== order && message.kind !== "failed")) return;
      const member = members[index]!;
      if (message.kind === "failed") {
        over = true;
        fail(new Error(`a search failed: ${message.reason}`));
        return;
      }
      member.evaluations = message.evaluations;
      if (message.kind === "spent") return;
      if (message.kind !== "met") {
        if (isBetterPlan(problem, message.plan, member.best)) member.best = message.plan;
        if (isBetterPlan(problem, message.plan, best)) {
          best = message.plan;
          onPlan({ plan: best, evaluations: spent() });
        }
        if (stopping) {
          end(best!, spent());
          return;
        }
      }
      if (message.kind === "met") member.met.push({ best: member.best, evaluations: member.evaluations });
      if (message.kind === "done") member.isDone = true;
      if (message.kind !== "plan") meet();
    },
  };
}

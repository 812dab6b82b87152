import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { isSettled } from "../../core/lay/search/arrange/arrange.ts";
import { isBetterPlan } from "../../core/lay/search/comparePlans.ts";
import { problemLine } from "../../core/problems/describeProblem.ts";
import type { Language } from "../../core/units/language.ts";
import type { RunningSearch, SearchPool, SearchResult, SearchWish } from "../../worker/searchPool.ts";
import type { LayTask, Refused } from "../batch/layTask.ts";
import type { RunningTasks } from "../batch/runTasks.ts";
import type { QueueStore } from "./connect.ts";
import { present } from "./presence.ts";
import { sendLays } from "./sendLays.ts";
import { workerName } from "./takeLays.ts";

/** Evaluations of an island's first stretch; each next is half as long again, up to the longest. */
const FIRST_STRETCH = 200_000;
const LONGEST_STRETCH = 20_000_000;
const COUNT_MS = 2000;

/** The project whose cloths are searched. */
export interface IslandProject {
  /** Its whole text, as read. */
  readonly text: string;
  /** The cloths of its lays, in their order. */
  readonly materialIds: readonly string[];
  readonly language: Language;
}

/**
 * A pool whose workers are those of a queue, as islands: each searches the cloth with a seed of its own for a stretch,
 * from the best plan there is; what it sends back is checked here, and the best plan that has passed starts the next
 * stretches. Ends when nothing can be better. What comes depends on when: it is for searches by the clock.
 */
export function islandPool(store: QueueStore, project: IslandProject): SearchPool {
  let islands = 1;
  const count = async (): Promise<void> => {
    const found = await present(store, "workers");
    const ours = found.filter(({ version }) => version === store.version);
    islands = Math.max(
      1,
      ours.reduce((sum, { threads }) => sum + threads, 0),
    );
  };
  const timer = setInterval(() => void count().catch(() => {}), COUNT_MS);
  let current: RunningSearch | null = null;
  return {
    get threads() {
      return islands;
    },
    search(wish, onPlan = () => {}) {
      current?.stop();
      const ready = count().catch(() => {});
      current = searchOnIslands(store, project, wish, () => islands, ready, onPlan);
      return current;
    },
    close() {
      current?.stop();
      clearInterval(timer);
    },
  };
}

function searchOnIslands(
  store: QueueStore,
  { text, materialIds, language }: IslandProject,
  { problem, mode, seed, evaluations: most }: SearchWish,
  islands: () => number,
  ready: Promise<void>,
  onPlan: (found: SearchResult) => void,
): RunningSearch {
  const cloth = materialIds.indexOf(problem.materialId);
  const search = workerName();
  let best: LayPlan | null = null;
  let spent = 0;
  let stretches = 0;
  let isStopping = false;
  // A search that ended before its stretch was over had nothing left to find.
  let isExhausted = false;
  let running: RunningTasks | null = null;
  const isOver = (): boolean =>
    best !== null && (isStopping || isExhausted || spent >= most || isSettled(problem, best));
  function* tasks(): Generator<LayTask> {
    while (!isOver()) {
      const round = Math.floor(stretches / islands());
      const evaluations = Math.min(Math.round(FIRST_STRETCH * 1.5 ** round), LONGEST_STRETCH);
      // Twice an island's place apart, so that no two stretches have a seed in common.
      const own = (seed + 7919 * stretches) % 2 ** 31;
      yield {
        folder: `${search}/${stretches++}`,
        orders: [{ name: problem.materialId, folder: search, text }],
        withheld: {},
        effort: { evaluations: Math.ceil(evaluations), seed: own, mode },
        language,
        island: { cloth, from: best },
      };
    }
  }
  const take = async (
    { effort }: LayTask,
    plans: readonly LayPlan[],
  ): Promise<Refused | { readonly evaluations: number }> => {
    const [plan] = plans;
    if (plan === undefined || plans.length !== 1) return { refused: [`${plans.length} plans for 1 cloth`] };
    const faults = plan.materialId === problem.materialId ? checkPlan(problem, plan) : [];
    if (faults.length > 0 || plan.materialId !== problem.materialId)
      return { refused: faults.map((fault) => problemLine(fault)) };
    spent += plan.evaluations;
    isExhausted ||= plan.evaluations < effort.evaluations;
    if (isBetterPlan(problem, plan, best)) {
      best = { ...plan, seed };
      onPlan({ plan: best, evaluations: spent });
    }
    return { evaluations: plan.evaluations };
  };
  const result = (async (): Promise<SearchResult> => {
    await ready;
    let failed: string | null = null;
    running = sendLays(
      tasks(),
      store,
      {
        keyOf: ({ folder }) => folder.replaceAll("/", "-"),
        // Before the lays of batches: somebody waits for it.
        priorityOf: () => 1,
        draw: take,
        atOnce: 1,
        // Nobody comes back for a stretch.
        keptSeconds: 60,
        mostOut: islands,
      },
      (_, ended) => {
        if ("bug" in ended) failed = ended.bug;
        else if ("givenUp" in ended && best === null) failed = ended.givenUp.join("; ");
        if (failed !== null || isOver()) running?.stop();
      },
    );
    await running.ended;
    const found = best as LayPlan | null;
    if (found === null) throw new Error(failed ?? "no plan came back");
    return { plan: { ...found, evaluations: spent }, evaluations: spent };
  })();
  return {
    result,
    spent: () => spent,
    stop() {
      isStopping = true;
      if (best !== null) running?.stop();
    },
  };
}

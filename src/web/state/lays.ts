import type { LayJob } from "../../core/job/projectJob.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { isSettled } from "../../core/lay/search/arrange/arrange.ts";
import { isBetterPlan } from "../../core/lay/search/comparePlans.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import type { RunningSearch, SearchPool } from "../../worker/searchPool.ts";
import { derivedOf } from "./derived.ts";
import { createStore, type Store } from "./store.ts";

/**
 * How far the search for a material is. `waiting`: its turn comes. `finding`: better plans come in. `paused`: by the
 * person. `rested`: nothing better came for a while. `proven`: nothing can be better. `failed`: a fault of ours.
 */
export type Finding = "waiting" | "finding" | "paused" | "rested" | "proven" | "failed";

/** What is known of one material's lay. */
export interface LayState {
  readonly job: LayJob;
  /** Same text, same problem: a plan stays good as long as it does not change. */
  readonly signature: string;
  readonly plan: LayPlan | null;
  readonly finding: Finding;
  /** Placements tried, in all. */
  readonly evaluations: number;
}

/** All lays of the open project, by material id. */
export type Lays = ReadonlyMap<string, LayState>;

/** Looks for plans while the person works. */
export interface LayBoard {
  readonly lays: Store<Lays>;
  /** Takes the project's newest state; only materials whose lay problem changed are searched again. */
  follow(project: Project, language: Language): void;
  /** The material that is looked at: it is searched first and longest. */
  attend(materialId: string | null): void;
  /** While hushed, only first plans are looked for: those that are there stay as they are. */
  hush(isHushed: boolean): void;
  pause(materialId: string): void;
  resume(materialId: string): void;
  /** Shows a plan with a piece moved by hand until the search has one of its own. */
  showMoved(materialId: string, plan: LayPlan): void;
}

/** After this long without a better plan a search rests, ms; the one that is looked at gets the longer time. */
const PATIENCE = { looked: 12_000, other: 2_500 };

/** Plans that are remembered for undo, of all materials together. */
const MOST_KNOWN = 60;

/** A search gives way to a material that is looked at after this long, ms. */
const TURN = 1_200;

/**
 * The workers of a board. `first` does nothing but first plans, so that an edit never waits for the end of a turn of
 * a search that it made pointless; `more` looks for better ones.
 */
export interface LayPools {
  readonly first: SearchPool;
  readonly more: SearchPool;
}

/** A board that searches with the given workers; they are asked for once, when there is something to search. */
export function createLayBoard(newPools: () => LayPools, now: () => number): LayBoard {
  const lays = createStore<Lays>(new Map());
  let pools: LayPools | null = null;
  let hurrying: { readonly problem: LayProblem; stop(): void } | null = null;
  let running: { id: string; search: RunningSearch; startedAt: number; betterAt: number } | null = null;
  let attended: string | null = null;
  let hushed = false;
  let seed = 1;

  const patch = (id: string, part: Partial<LayState>) => {
    const state = lays.get().get(id);
    if (state !== undefined) lays.set(new Map(lays.get()).set(id, { ...state, ...part }));
  };
  const stop = () => {
    const stopped = running;
    running = null;
    stopped?.search.stop();
  };
  const isLooked = ([id]: readonly [string, LayState]) => id === attended;
  const isWaiting = ([, { finding }]: readonly [string, LayState]) => finding === "waiting";
  /** First plans first; better ones once every material has one. */
  const next = () => {
    if (hurrying !== null) return;
    const waiting = [...lays.get()].filter(isWaiting);
    const bare = waiting.filter(([, { plan }]) => plan === null);
    const first = bare.find(isLooked) ?? bare[0];
    if (first !== undefined) hurry(first[0], first[1].job.problem);
    else if (running === null && !hushed) {
      const chosen = waiting.find(isLooked) ?? waiting[0];
      if (chosen !== undefined) start(chosen[0], chosen[1]);
    }
  };
  const hurry = (id: string, problem: LayProblem) => {
    pools ??= newPools();
    const over = () => {
      if (hurrying !== mine) return;
      hurrying = null;
      next();
    };
    const mine = { problem, stop: () => search.stop() };
    hurrying = mine;
    const search = pools.first.search(
      { problem, mode: "free", seed: 1, evaluations: Infinity },
      ({ plan, evaluations }) => {
        if (hurrying !== mine) return;
        take(id, problem, plan, evaluations);
        if (isSettled(problem, plan)) patch(id, { finding: "proven" });
        search.stop();
        over();
      },
    );
    search.result.then(over, (error: unknown) => {
      console.error(error);
      if (lays.get().get(id)?.job.problem === problem) patch(id, { finding: "failed" });
      over();
    });
  };
  const start = (id: string, state: LayState) => {
    const { problem } = state.job;
    pools ??= newPools();
    const before = state.evaluations;
    const mine = { id, startedAt: now(), betterAt: now(), search: undefined as unknown as RunningSearch };
    running = mine;
    patch(id, { finding: "finding" });
    mine.search = pools.more.search(
      { problem, mode: "free", seed: seed++, evaluations: Infinity },
      ({ plan, evaluations }) => {
        if (running !== mine) return;
        mine.betterAt = now();
        take(id, problem, plan, before + evaluations);
      },
    );
    mine.search.result
      .then(({ plan, evaluations }) => {
        if (running !== mine) return;
        running = null;
        take(id, problem, plan, before + evaluations);
        patch(id, { finding: isSettled(problem, plan) ? "proven" : "rested" });
        next();
      })
      .catch((error: unknown) => {
        console.error(error);
        if (running !== mine) return;
        running = null;
        patch(id, { finding: "failed" });
        next();
      });
  };
  const take = (id: string, problem: LayProblem, plan: LayPlan, evaluations: number) => {
    const state = lays.get().get(id);
    if (state === undefined || state.job.problem !== problem) return;
    const better = state.plan === null || isMoved.has(state.plan) || isBetterPlan(problem, plan, state.plan);
    patch(id, better ? { plan, evaluations } : { evaluations });
  };
  const isMoved = new WeakSet<LayPlan>();
  /** Plans that were found, by signature: what undo goes back to is there at once. */
  const known = new Map<string, LayPlan>();
  const remember = ({ signature, plan }: LayState) => {
    if (plan === null || isMoved.has(plan)) return;
    known.delete(signature);
    known.set(signature, plan);
    if (known.size > MOST_KNOWN) known.delete(known.keys().next().value!);
  };

  const giveWay = (finding: Finding) => {
    const id = running?.id;
    stop();
    if (id !== undefined) patch(id, { finding });
    next();
  };
  setInterval(() => {
    const state = running === null ? undefined : lays.get().get(running.id);
    if (running === null || state === undefined || state.plan === null) return;
    const isLookedWaiting = running.id !== attended && [...lays.get()].filter(isWaiting).some(isLooked);
    const patience = running.id === attended ? PATIENCE.looked : PATIENCE.other;
    if (hushed) giveWay("waiting");
    else if (isLookedWaiting && now() - running.startedAt > TURN) giveWay("waiting");
    else if (now() - running.betterAt > patience) giveWay("rested");
  }, 300);

  return {
    lays,
    follow: (project, language) => {
      for (const state of lays.get().values()) remember(state);
      const fresh = new Map<string, LayState>();
      for (const job of derivedOf(project, language).lays) {
        const id = job.material.id;
        const signature = signatureOf(job.problem);
        const old = lays.get().get(id);
        if (old?.signature === signature)
          fresh.set(id, { ...old, job: { material: job.material, problem: old.job.problem } });
        else {
          if (running?.id === id) stop();
          const moved = old?.plan && isMoved.has(old.plan) ? old.plan : null;
          const plan = known.get(signature) ?? moved;
          fresh.set(id, { job, signature, plan, finding: "waiting", evaluations: 0 });
        }
      }
      if (running !== null && !fresh.has(running.id)) stop();
      lays.set(fresh);
      const stillWanted = [...fresh.values()].some(({ job }) => job.problem === hurrying?.problem);
      if (hurrying !== null && !stillWanted) {
        const stale = hurrying;
        hurrying = null;
        stale.stop();
      }
      next();
    },
    attend: (materialId) => {
      if (attended === materialId) return;
      attended = materialId;
      const wanted = materialId === null ? undefined : lays.get().get(materialId);
      if (wanted?.finding === "waiting" && running !== null && running.id !== materialId) giveWay("waiting");
    },
    hush: (isHushed) => {
      hushed = isHushed;
      if (hushed && running !== null && lays.get().get(running.id)?.plan) giveWay("waiting");
      else next();
    },
    pause: (materialId) => {
      if (running?.id === materialId) stop();
      patch(materialId, { finding: "paused" });
      next();
    },
    resume: (materialId) => {
      attended = materialId;
      patch(materialId, { finding: "waiting" });
      if (running === null) next();
      else if (running.id !== materialId) giveWay("waiting");
    },
    showMoved: (materialId, plan) => {
      const state = lays.get().get(materialId);
      if (state !== undefined) remember(state);
      isMoved.add(plan);
      patch(materialId, { plan });
    },
  };
}

/** Text that is the same for the same problem. Cost O(points). */
function signatureOf(problem: LayProblem): string {
  return JSON.stringify(problem, (_key, value: unknown) =>
    value instanceof Float64Array ? [...value].join(" ") : value,
  );
}

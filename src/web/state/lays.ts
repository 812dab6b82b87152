import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { isSettled } from "../../core/lay/search/arrange/arrange.ts";
import type { RunningSearch } from "../../worker/searchPool.ts";
import type { FoundPlan } from "../storage/planStore.ts";
import { choiceRules, isBetterFor, laySignature, searchedFor, stockChooser } from "./chosenStock.ts";
import { derivedOf } from "./derived.ts";
import type { ChooseStock, ChosenStock, Finding, LayBoard, LayPools, LayState, Lays } from "./layBoard.ts";
import { isTried, leastLook, PATIENCE } from "./patience.ts";
import { createStore } from "./store.ts";

/** Plans that are remembered for undo, of all materials together. */
const MOST_KNOWN = 60;

/** A search gives way to a material that is looked at after this long, ms. */
const TURN = 1_200;

/**
 * A board that searches with the given workers; they are asked for once, when there is something to search. `keep`
 * hears of every better plan, and of what was spent on it. Where a cloth has several stocks to buy, `choose` says which to
 * cut into for least money, and better plans are looked for on those.
 */
export function createLayBoard(
  newPools: () => LayPools,
  now: () => number,
  keep: (found: FoundPlan) => void = () => {},
  choose: ChooseStock | null = null,
): LayBoard {
  const lays = createStore<Lays>(new Map());
  let pools: LayPools | null = null;
  let hurrying: { readonly problem: LayProblem; stop(): void } | null = null;
  let running: { id: string; before: number; search: RunningSearch; startedAt: number; gainedAt: number } | null =
    null;
  const chooser = stockChooser(choose);
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
    const unchosen = [...lays.get().values()].find(isUnchosen);
    if (first === undefined && unchosen !== undefined)
      chooser.begin(unchosen, (choice) => chooseFor(unchosen, choice));
    if (first !== undefined) hurry(first[0], first[1].job.problem);
    else if (running === null && !hushed) {
      const waiting = [...lays.get()].filter((each) => isWaiting(each) && !isUnchosen(each[1]));
      const isFresh = ([, state]: readonly [string, LayState]) => !isTried(state, PATIENCE.first);
      const chosen = waiting.find(isLooked) ?? waiting.find(isFresh) ?? waiting[0];
      if (chosen !== undefined) start(chosen[0], chosen[1]);
    }
  };
  /** What a person moved by hand is no plan to choose by yet. */
  const isUnchosen = (state: LayState) => chooser.isWanted(state) && !isMoved.has(state.plan!);
  const chooseFor = ({ job: { material, problem } }: LayState, choice: ChosenStock | null) => {
    const state = lays.get().get(material.id);
    if (state?.job.problem === problem && state.plan !== null) {
      patch(material.id, { choice: choice ?? { plan: state.plan, others: [] } });
      if (choice !== null) take(material.id, problem, choice.plan, state.evaluations);
    }
    next();
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
        if (isSettled(problem, plan) && lays.get().get(id)?.rules === null) patch(id, { finding: "proven" });
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
    const searched = searchedFor(state);
    const mine = { id, before, startedAt: now(), gainedAt: now(), search: undefined as unknown as RunningSearch };
    running = mine;
    patch(id, { finding: "finding" });
    mine.search = pools.more.search(
      { problem: searched.problem, mode: "free", seed: seed++, evaluations: Infinity },
      ({ plan, evaluations }) => {
        if (running === mine && take(id, problem, searched.whole(plan), before + evaluations))
          mine.gainedAt = now();
      },
    );
    mine.search.result
      .then(({ plan, evaluations }) => {
        if (running !== mine) return;
        running = null;
        take(id, problem, searched.whole(plan), before + evaluations);
        patch(id, { finding: isSettled(searched.problem, plan) ? "proven" : "rested" });
        keepFound(id);
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
  const take = (id: string, problem: LayProblem, plan: LayPlan, evaluations: number): boolean => {
    const state = lays.get().get(id);
    if (state === undefined || state.job.problem !== problem) return false;
    const better = state.plan === null || isMoved.has(state.plan) || isBetterFor(state, plan);
    patch(id, better ? { plan, evaluations, betterAt: evaluations } : { evaluations });
    if (better) keepFound(id);
    return better;
  };
  const keepFound = (id: string) => {
    const state = lays.get().get(id);
    if (state === undefined || state.plan === null || isMoved.has(state.plan)) return;
    const { signature, plan, evaluations, betterAt, finding } = state;
    keep({ signature, materialId: id, plan, evaluations, betterAt, ...standingOf(finding) });
  };
  const standingOf = (finding: Finding) => ({ isHeld: finding === "held", isRested: finding === "rested" });
  const isMoved = new WeakSet<LayPlan>();
  /** Plans that were found, by signature: what undo goes back to is there at once. */
  const known = new Map<string, FoundPlan>();
  const remember = ({ job, signature, plan, evaluations, betterAt, finding }: LayState) => {
    if (plan === null || isMoved.has(plan)) return;
    known.delete(signature);
    const materialId = job.material.id;
    known.set(signature, { signature, materialId, plan, evaluations, betterAt, ...standingOf(finding) });
    if (known.size > MOST_KNOWN) known.delete(known.keys().next().value!);
  };

  const giveWay = (finding: Finding) => {
    const stopped = running;
    if (stopped !== null) patch(stopped.id, { finding, evaluations: stopped.before + stopped.search.spent() });
    stop();
    if (stopped !== null) keepFound(stopped.id);
    next();
  };
  setInterval(() => {
    const state = running === null ? undefined : lays.get().get(running.id);
    if (running === null || state === undefined || state.plan === null) return;
    const isLookedWaiting = running.id !== attended && [...lays.get()].filter(isWaiting).some(isLooked);
    const tried = { ...state, evaluations: running.before + running.search.spent() };
    const others = [...lays.get()].filter(isWaiting).some(([, other]) => !isTried(other, PATIENCE.first));
    const isShort = running.id !== attended && others;
    if (hushed) giveWay("waiting");
    else if (isLookedWaiting && now() - running.startedAt > TURN) giveWay("waiting");
    else if (isTried(tried, PATIENCE.whole) && now() - running.gainedAt >= leastLook(state.job.problem))
      giveWay("rested");
    // Another cloth has had no turn yet; this one comes again.
    else if (isShort && isTried(tried, PATIENCE.first)) giveWay("waiting");
  }, 300);

  /** What a lay starts from: a plan that was found before for the same problem, or a moved one. */
  const startOf = (problem: LayProblem, signature: string, moved: LayPlan | null) => {
    const found = known.get(signature);
    if (found === undefined || checkPlan(problem, found.plan).length > 0)
      return { plan: moved, finding: "waiting" as const, evaluations: 0, betterAt: 0 };
    const { plan, evaluations, betterAt, isHeld, isRested } = found;
    const state = { plan, evaluations, betterAt };
    if (isHeld) return { ...state, finding: "held" as const };
    if (isSettled(problem, plan)) return { ...state, finding: "proven" as const };
    const isOver = isRested ?? isTried(state, PATIENCE.whole);
    return { ...state, finding: isOver ? ("rested" as const) : ("waiting" as const) };
  };

  return {
    lays,
    follow: (project, language) => {
      for (const state of lays.get().values()) remember(state);
      const fresh = new Map<string, LayState>();
      for (const job of derivedOf(project, language).lays) {
        const id = job.material.id;
        const rules = choiceRules(project, job.material);
        const signature = laySignature(project, job);
        const old = lays.get().get(id);
        if (old?.signature === signature)
          fresh.set(id, { ...old, job: { material: job.material, problem: old.job.problem } });
        else {
          if (running?.id === id) stop();
          const moved = old?.plan && isMoved.has(old.plan) ? old.plan : null;
          const start = startOf(job.problem, signature, moved);
          fresh.set(id, { job, signature, rules, choice: null, ...start });
        }
      }
      if (running !== null && !fresh.has(running.id)) stop();
      lays.set(fresh);
      chooser.follow(
        project,
        language,
        [...fresh.values()].map(({ job }) => job.problem),
      );
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
      // Asked for: it looks as long again.
      const asked = lays.get().get(materialId);
      if (asked !== undefined) patch(materialId, { finding: "waiting", betterAt: asked.evaluations });
      if (running === null) next();
      else if (running.id !== materialId) giveWay("waiting");
    },
    showMoved: (materialId, plan) => {
      const state = lays.get().get(materialId);
      if (state !== undefined) remember(state);
      isMoved.add(plan);
      patch(materialId, { plan });
    },
    offer: (problem, plan) => {
      const id = problem.materialId;
      const state = lays.get().get(id);
      if (state === undefined || state.job.problem !== problem || state.finding === "held") return;
      take(id, problem, plan, state.evaluations);
    },
    goBackTo: (materialId, plan) => {
      const state = lays.get().get(materialId);
      if (state === undefined || checkPlan(state.job.problem, plan).length > 0) return;
      if (running?.id === materialId) stop();
      patch(materialId, { plan, finding: "held", betterAt: state.evaluations });
      keepFound(materialId);
      next();
    },
    hold: (materialId) => {
      if (running?.id === materialId) stop();
      patch(materialId, { finding: "held" });
      keepFound(materialId);
      next();
    },
    recall: (found) => {
      for (const each of found) {
        if ((known.get(each.signature)?.evaluations ?? -1) < each.evaluations) known.set(each.signature, each);
        const state = lays.get().get(each.materialId);
        if (state?.signature !== each.signature || state.finding === "held") continue;
        const isNews = each.isHeld || isBetterFor(state, each.plan);
        if (!isNews || (state.plan !== null && isMoved.has(state.plan))) continue;
        known.set(each.signature, each);
        if (running?.id === each.materialId) stop();
        patch(each.materialId, startOf(state.job.problem, each.signature, null));
      }
      next();
    },
  };
}

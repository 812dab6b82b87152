import type { MoneyRules } from "../../core/buying/moneyRules.ts";
import type { LayJob } from "../../core/job/projectJob.ts";
import type { OtherWay } from "../../core/job/stocks/openedStocks.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import type { SearchPool } from "../../worker/searchPool.ts";
import type { FoundPlan } from "../storage/planStore.ts";
import type { Store } from "./store.ts";

/**
 * How far the search for a material is. `waiting`: its turn comes. `finding`: better plans come in. `paused`: by the
 * person. `rested`: nothing better came in so many trials. `proven`: nothing can be better. `held`: pages or files were
 * saved from the plan, so it stays as it is. `failed`: a fault of ours.
 */
export type Finding = "waiting" | "finding" | "paused" | "rested" | "proven" | "held" | "failed";

/** What is known of one material's lay. */
export interface LayState {
  readonly job: LayJob;
  /** Same text, same problem: a plan stays good as long as it does not change. */
  readonly signature: string;
  readonly plan: LayPlan | null;
  readonly finding: Finding;
  /** Placements tried, in all, and until the plan was found. */
  readonly evaluations: number;
  readonly betterAt: number;
  /** Of a cloth with several stocks to buy: what money is reckoned in; null of one that leaves no choice. */
  readonly rules: MoneyRules | null;
  /** Which of them to cut into and what the other ways cost, once that is worked out. */
  readonly choice: ChosenStock | null;
}

/** Which stocks are cut into for least money. */
export interface ChosenStock {
  readonly plan: LayPlan;
  /** Ways that open something else, cheapest first. */
  readonly others: readonly OtherWay[];
}

/** Works out which stocks of a cloth to cut into, beside the page. */
export type ChooseStock = (
  project: Project,
  materialId: string,
  language: Language,
) => { readonly result: Promise<ChosenStock>; stop(): void };

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
  /** Takes a plan that was found elsewhere for the problem that is laid now, when it is better. */
  offer(problem: LayProblem, plan: LayPlan): void;
  /** Lays a plan that was kept by name, and holds it. */
  goBackTo(materialId: string, plan: LayPlan): void;
  /** Keeps a plan as it is from now on: something was printed or saved from it. */
  hold(materialId: string): void;
  /** Plans that were found at an earlier sitting. */
  recall(found: readonly FoundPlan[]): void;
}

/**
 * The workers of a board. `first` does nothing but first plans, so that an edit never waits for the end of a turn of
 * a search that it made pointless; `more` looks for better ones.
 */
export interface LayPools {
  readonly first: SearchPool;
  readonly more: SearchPool;
}

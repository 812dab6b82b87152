import type { MoneyRules } from "../../core/buying/moneyRules.ts";
import type { LayJob } from "../../core/job/projectJob.ts";
import { hasStockChoice } from "../../core/job/stocks/cheapestPlan.ts";
import { isCheaperPlan, onAll, openedIn, withOpened } from "../../core/job/stocks/openedStocks.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { isBetterPlan } from "../../core/lay/search/comparePlans.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import type { ChooseStock, ChosenStock, LayState } from "./layBoard.ts";
import { problemSignature } from "./problemSignature.ts";

/** What money of a cloth is reckoned in, where there is a choice of what to buy; nothing else of the project. */
export function choiceRules({ currency, tax }: Project, material: Material): MoneyRules | null {
  return hasStockChoice(material) ? { currency, tax } : null;
}

/** A short text that is the same as long as plans stay good: prices count where they say what to buy. Cost O(points). */
export function laySignature(project: Project, { material, problem }: LayJob): string {
  const { price, stock } = material;
  const rules = choiceRules(project, material);
  return problemSignature(
    problem,
    rules && [rules, price, stock.map((one) => [one.id, one.toBuy === true, one.price ?? null])],
  );
}

/** By money where there is a choice of what to buy, else by cloth. Any plan is better than none. */
export function isBetterFor({ job: { material, problem }, rules, plan: best }: LayState, plan: LayPlan): boolean {
  return rules === null ? isBetterPlan(problem, plan, best) : isCheaperPlan(material, problem, rules, plan, best);
}

/** The problem with what was chosen to cut into alone, and a plan for it as one for the whole. */
export function searchedFor({ job: { material, problem }, choice, plan: best }: LayState): {
  readonly problem: LayProblem;
  whole(plan: LayPlan): LayPlan;
} {
  if (choice === null || best === null) return { problem, whole: (plan) => plan };
  return {
    problem: withOpened(material, problem, openedIn(material, best)),
    whole: (plan) => onAll(problem, plan),
  };
}

/** Finds out one cloth after the other what to cut into. */
export interface StockChooser {
  /** Whether that is still to be found: better plans wait for it. */
  isWanted(state: LayState): boolean;
  /** Begins with one, unless another is under way; `over` hears what came of it, null when it failed. */
  begin(state: LayState, over: (choice: ChosenStock | null) => void): void;
  /** The project as it is now; a choice for a problem that is gone is given up. */
  follow(project: Project, language: Language, problems: readonly LayProblem[]): void;
}

/** A chooser that asks `choose`; without one nothing is ever chosen. */
export function stockChooser(choose: ChooseStock | null): StockChooser {
  let followed: { readonly project: Project; readonly language: Language } | null = null;
  let running: { readonly problem: LayProblem; stop(): void } | null = null;
  return {
    isWanted: ({ rules, choice, plan, finding }) =>
      choose !== null && rules !== null && choice === null && plan !== null && finding !== "held",
    begin: ({ job: { material, problem } }, over) => {
      if (choose === null || followed === null || running !== null) return;
      const asked = choose(followed.project, material.id, followed.language);
      const mine = { problem, stop: () => asked.stop() };
      running = mine;
      const end = (choice: ChosenStock | null) => {
        if (running !== mine) return;
        running = null;
        over(choice);
      };
      asked.result.then(end, (error: unknown) => {
        console.error(error);
        end(null);
      });
    },
    follow: (project, language, problems) => {
      followed = { project, language };
      if (running === null || problems.includes(running.problem)) return;
      running.stop();
      running = null;
    },
  };
}

import type { MoneyRules } from "../../core/buying/moneyRules.ts";
import { type JudgedCloth, judgeCloth } from "../../core/job/laidCloth.ts";
import type { LayJob, ProjectJob } from "../../core/job/projectJob.ts";
import { cheapestPlan, hasStockChoice } from "../../core/job/stocks/cheapestPlan.ts";
import { isCheaperPlan, onAll, openedIn, withOpened } from "../../core/job/stocks/openedStocks.ts";
import type { LayChoice } from "../../core/lay/alternatives/searchChoices.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { copiesLeftOut, copiesOf, lengthUsed } from "../../core/lay/problem/planSums.ts";
import type { ChoiceFor } from "../../core/lay/search/comparePlans.ts";
import { isBetterPlan } from "../../core/lay/search/comparePlans.ts";
import type { CutMode } from "../../core/lay/search/engine.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import type { SearchPool, SearchResult } from "../../worker/searchPool.ts";
import type { Io } from "../command.ts";
import { attended, type SearchEnd, timedSearch } from "../timedSearch.ts";
import { CLI_TEXTS } from "../words/words.ts";
import { layChoices } from "./layChoices.ts";

/** How long and how to lay a project. */
export interface LayEffort {
  readonly seconds: number;
  /** For each material. */
  readonly evaluations: number;
  readonly seed: number;
  readonly mode: CutMode;
  /** Which of three plans to take; null to search for the shortest alone. */
  readonly choose: ChoiceFor | null;
  readonly threads: number;
}

/** A cloth's search ends when nothing better has come for this share of its seconds, and for so many at least. */
const QUIET_SHARE = 0.4;
const LEAST_QUIET = 3;

/** What was laid, and how the searching went. */
export interface LaidProject {
  readonly laid: JudgedCloth[];
  /** Seconds searched in all, and for how many cloths the search ended because nothing better came. */
  readonly seconds: number;
  readonly quiet: number;
}

/** Share of the seconds in which every cloth is laid once; the rest goes to those that can still gain. */
const FIRST_SHARE = 0.4;
/** What a cloth without a proven length may gain, as a share of its length. */
const LIKELY_GAIN = 0.02;

/**
 * Lays every material of a project. By the clock all are laid once; the seconds left then go to those whose plans are
 * not proven, each as many as it may still save.
 */
export async function layProject(
  job: ProjectJob,
  pool: SearchPool,
  effort: LayEffort,
  io: Io,
): Promise<LaidProject> {
  const start = performance.now();
  const since = (): number => (performance.now() - start) / 1000;
  const cloths = job.lays.map((lay): Cloth => ({ lay, best: null, ended: "time" }));
  const left = (seconds: number): number => Math.max(0, seconds - since());
  const isByClock = effort.choose === null && effort.evaluations === Infinity;
  const firstSeconds = isByClock && cloths.length > 1 ? FIRST_SHARE * effort.seconds : effort.seconds;
  for (const [i, cloth] of cloths.entries())
    await layCloth(cloth, left(firstSeconds) / (cloths.length - i), pool, effort, job.project, io, since);
  const open = isByClock ? cloths.filter(({ ended }) => ended === "time") : [];
  const gains = open.map(({ best }) => mayGain(best!));
  const isStopped = cloths.some(({ ended }) => ended === "person");
  for (const [i, cloth] of isStopped ? [] : open.entries()) {
    const sum = gains.slice(i).reduce((total, gain) => total + gain, 0);
    const seconds = (left(effort.seconds) * gains[i]!) / sum;
    // What the first look had is found again on the way.
    if (seconds > 2 * (firstSeconds / cloths.length))
      await layCloth(cloth, seconds, pool, effort, job.project, io, since);
  }
  io.progress("");
  const mode = effort.choose === "easiest" ? "ruler" : effort.mode;
  const laid = cloths.map(({ lay, best }) => judgeCloth({ ...lay, plan: best! }, mode, job.project));
  return { laid, seconds: since(), quiet: cloths.filter(({ ended }) => ended === "quiet").length };
}

/** A cloth under work: its best plan, and what ended its last search. */
interface Cloth {
  readonly lay: LayJob;
  best: LayPlan | null;
  ended: SearchEnd;
}

async function layCloth(
  cloth: Cloth,
  seconds: number,
  pool: SearchPool,
  { seed, mode, evaluations, choose, threads }: LayEffort,
  rules: MoneyRules,
  io: Io,
  since: () => number,
): Promise<void> {
  const { material, problem } = cloth.lay;
  const isChosen = choose === null && hasStockChoice(material);
  const take = (found: LayPlan): void => {
    const plan = isChosen ? onAll(problem, found) : found;
    const better = isChosen
      ? isCheaperPlan(material, problem, rules, plan, cloth.best)
      : isBetterPlan(problem, plan, cloth.best);
    if (better) cloth.best = plan;
  };
  const show = (): void => io.progress(progressLine(material, problem, cloth.best, since(), io.language));
  show();
  const clock = setInterval(show, 1000);
  try {
    if (choose !== null) {
      take(chosenPlan(await layChoices(problem, pool, { seconds, evaluations, seed, threads }), choose));
      return;
    }
    // A search by effort ends by effort alone: its plan depends on no clock.
    const patience = evaluations < Infinity ? Infinity : Math.max(LEAST_QUIET, QUIET_SHARE * seconds);
    const hear = ({ plan }: SearchResult): void => {
      take(plan);
      show();
    };
    // What to open is chosen by money first; then only that is laid out well.
    if (isChosen && cloth.best === null)
      take(
        (await attended(cheapestPlan(material, problem, rules, { mode, seed, evaluations: CHOICE_EFFORT }))).best
          .plan,
      );
    const opened = cloth.best === null ? [] : openedIn(material, cloth.best);
    const searched = isChosen ? withOpened(material, problem, opened) : problem;
    const wish = { problem: searched, mode, seed, evaluations };
    const found = await timedSearch(pool, wish, seconds, hear, patience);
    take(found.plan);
    cloth.ended = found.ended;
  } finally {
    clearInterval(clock);
  }
}

/** Evaluations for each set of stock that is looked at. */
export const CHOICE_EFFORT = 20_000;

/** Length that a better plan may save, mm: all of it where pieces are left out. */
function mayGain(plan: LayPlan): number {
  if (plan.unplaced.length > 0) return lengthUsed(plan) + 1;
  return plan.uses.reduce((sum, { usedLength, bound }) => {
    return sum + (bound === null ? LIKELY_GAIN * usedLength : usedLength - bound);
  }, 1);
}

/** The plan chosen for something; the shortest where none can be cut by ruler. */
function chosenPlan(choices: readonly LayChoice[], choose: ChoiceFor): LayPlan {
  return (choices.find(({ best }) => best.includes(choose)) ?? choices[0]!).plan;
}

/** Cloth, length, how far that is from proven, pieces, seconds: what a person waiting looks at. */
function progressLine(
  { name }: Material,
  problem: LayProblem,
  plan: LayPlan | null,
  seconds: number,
  language: Language,
): string {
  const texts = CLI_TEXTS[language].lay;
  const pieces = copiesOf(problem.pieces);
  const time = Math.round(seconds);
  if (!plan) return texts.laying(name, pieces, time);
  const [use] = plan.uses.filter(({ usedLength }) => usedLength > 0);
  const gap =
    plan.uses.length === 1 && use?.bound
      ? withDecimalSign((100 * (use.usedLength / use.bound - 1)).toFixed(1), language)
      : null;
  const metres = withDecimalSign((lengthUsed(plan) / 1000).toFixed(3), language);
  return texts.laid(name, metres, gap, pieces - copiesLeftOut(plan), pieces, time);
}

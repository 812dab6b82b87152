import { type JudgedCloth, judgeCloth } from "../../core/job/laidCloth.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { ChoiceFor, LayChoice } from "../../core/lay/alternatives/searchChoices.ts";
import type { CutMode } from "../../core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { copiesLeftOut, copiesOf, lengthUsed } from "../../core/lay/problem/planSums.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import type { SearchPool, SearchResult } from "../../worker/searchPool.ts";
import type { Io } from "../command.ts";
import { timedSearch } from "../timedSearch.ts";
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

/** Lays every material of a project in turn; what one leaves of the seconds goes to the next ones. */
export async function layProject(
  { lays }: ProjectJob,
  pool: SearchPool,
  effort: LayEffort,
  io: Io,
): Promise<LaidProject> {
  const { seed, mode, evaluations, choose, threads } = effort;
  const start = performance.now();
  const laid: JudgedCloth[] = [];
  let quiet = 0;
  const since = (): number => (performance.now() - start) / 1000;
  for (const [index, { material, problem }] of lays.entries()) {
    const seconds = Math.max(0, effort.seconds - since()) / (lays.length - index);
    let best: LayPlan | null = null;
    const show = (): void => io.progress(progressLine(material, problem, best, since(), io.language));
    show();
    const clock = setInterval(show, 1000);
    try {
      if (choose === null) {
        const wish = { problem, mode, seed, evaluations };
        // A search by effort ends by effort alone: its plan depends on no clock.
        const patience = evaluations < Infinity ? Infinity : Math.max(LEAST_QUIET, QUIET_SHARE * seconds);
        const hear = ({ plan }: SearchResult): void => {
          best = plan;
          show();
        };
        const found = await timedSearch(pool, wish, seconds, hear, patience);
        best = found.plan;
        if (found.isQuiet) quiet++;
      } else best = chosenPlan(await layChoices(problem, pool, { seconds, evaluations, seed, threads }), choose);
    } finally {
      clearInterval(clock);
    }
    laid.push(judgeCloth({ material, problem, plan: best }, choose === "easiest" ? "ruler" : mode));
  }
  io.progress("");
  return { laid, seconds: since(), quiet };
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

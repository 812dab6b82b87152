import { type JudgedCloth, judgeCloth } from "../../core/job/laidCloth.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { ChoiceFor, LayChoice } from "../../core/lay/alternatives/searchChoices.ts";
import type { CutMode } from "../../core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { copiesLeftOut, copiesOf, lengthUsed } from "../../core/lay/problem/planSums.ts";
import type { Material } from "../../core/materials/material.ts";
import type { SearchPool } from "../../worker/searchPool.ts";
import type { Io } from "../command.ts";
import { timedSearch } from "../timedSearch.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/cliTextTables.ts";
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

/** Lays every material of a project in turn; what one leaves of the seconds goes to the next ones. */
export async function layProject(
  { lays }: ProjectJob,
  pool: SearchPool,
  effort: LayEffort,
  io: Io,
): Promise<JudgedCloth[]> {
  const { seed, mode, evaluations, choose, threads } = effort;
  const texts = CLI_TEXTS[io.language].lay;
  const end = performance.now() + effort.seconds * 1000;
  const laid: JudgedCloth[] = [];
  for (const [index, { material, problem }] of lays.entries()) {
    const seconds = Math.max(0, end - performance.now()) / 1000 / (lays.length - index);
    const show = (plan: LayPlan | null): void => io.progress(progressLine(material, problem, plan, texts));
    show(null);
    const plan =
      choose === null
        ? (await timedSearch(pool, { problem, mode, seed, evaluations }, seconds, (found) => show(found.plan))).plan
        : chosenPlan(await layChoices(problem, pool, { seconds, evaluations, seed, threads }), choose);
    laid.push(judgeCloth({ material, problem, plan }, choose === "easiest" ? "ruler" : mode));
  }
  io.progress("");
  return laid;
}

/** The plan chosen for something; the shortest where none can be cut by ruler. */
function chosenPlan(choices: readonly LayChoice[], choose: ChoiceFor): LayPlan {
  return (choices.find(({ best }) => best.includes(choose)) ?? choices[0]!).plan;
}

function progressLine(
  { name }: Material,
  problem: LayProblem,
  plan: LayPlan | null,
  texts: CliTexts["lay"],
): string {
  const pieces = copiesOf(problem.pieces);
  if (!plan) return texts.laying(name, pieces);
  return texts.laid(name, (lengthUsed(plan) / 1000).toFixed(3), pieces - copiesLeftOut(plan), pieces);
}

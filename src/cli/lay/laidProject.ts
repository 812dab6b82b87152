import { planOffcuts, type StockOffcuts } from "../../core/buying/planOffcuts.ts";
import { type Purchase, purchaseOf } from "../../core/buying/purchase.ts";
import type { ChoiceFor, LayChoice } from "../../core/lay/alternatives/searchChoices.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import { type CutMode, chooseEngines } from "../../core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { whyUnplaced } from "../../core/lay/search/arrange/whyUnplaced.ts";
import type { Material } from "../../core/materials/material.ts";
import type { LayFinding, LeftOut } from "../../core/problems/layProblems.ts";
import type { Language } from "../../core/units/language.ts";
import type { SearchPool } from "../../worker/searchPool.ts";
import type { Io } from "../command.ts";
import type { ReadProject } from "../inOut/readProjectFile.ts";
import { timedSearch } from "../timedSearch.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/cliTextTables.ts";
import { layChoices } from "./layChoices.ts";
import { modeNote } from "./modeNote.ts";

/** One material laid, checked and priced. */
export interface LaidCloth {
  readonly material: Material;
  readonly problem: LayProblem;
  readonly plan: LayPlan;
  /** Faults the checker found: none, or we have a bug. */
  readonly faults: readonly LayFinding[];
  readonly leftOut: readonly LeftOut[];
  readonly purchase: Purchase;
  readonly offcuts: readonly StockOffcuts[];
  /** What the plan did not keep of the way of cutting that was asked for. */
  readonly note: string | null;
}

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
  { project, problems }: ReadProject,
  pool: SearchPool,
  effort: LayEffort,
  io: Io,
): Promise<LaidCloth[]> {
  const { seed, mode, evaluations, choose, threads } = effort;
  const texts = CLI_TEXTS[io.language].lay;
  const end = performance.now() + effort.seconds * 1000;
  const laid: LaidCloth[] = [];
  for (const [index, problem] of problems.entries()) {
    const material = project.materials.find(({ id }) => id === problem.materialId)!;
    const seconds = Math.max(0, end - performance.now()) / 1000 / (problems.length - index);
    const show = (plan: LayPlan | null): void => io.progress(progressLine(material, problem, plan, texts));
    show(null);
    const search = async (by: CutMode): Promise<LayPlan> =>
      (await timedSearch(pool, { problem, mode: by, seed, evaluations }, seconds, (found) => show(found.plan)))
        .plan;
    let plan =
      choose === null
        ? await search(mode)
        : chosenPlan(await layChoices(problem, pool, { seconds, evaluations, seed, threads }), choose);
    if (choose === null && mode !== "free" && copiesLeft(plan) > 0) {
      // A piece left out is worse than a cut without the ruler.
      const free = await search("free");
      if (copiesLeft(free) < copiesLeft(plan)) plan = free;
    }
    laid.push(finishedCloth(material, problem, plan, choose === "easiest" ? "ruler" : mode, io.language));
  }
  io.progress("");
  return laid;
}

/** The plan chosen for something; the shortest where none can be cut by ruler. */
function chosenPlan(choices: readonly LayChoice[], choose: ChoiceFor): LayPlan {
  return (choices.find(({ best }) => best.includes(choose)) ?? choices[0]!).plan;
}

function finishedCloth(
  material: Material,
  problem: LayProblem,
  plan: LayPlan,
  mode: CutMode,
  language: Language,
): LaidCloth {
  const purchase = purchaseOf(material, plan);
  return {
    material,
    problem,
    plan,
    faults: checkPlan(problem, plan),
    leftOut: whyUnplaced(problem, plan, (job) => chooseEngines(job, mode)),
    purchase,
    offcuts: planOffcuts(material, problem, plan, purchase),
    note: modeNote(problem, plan, mode, language),
  };
}

function progressLine(
  { name }: Material,
  problem: LayProblem,
  plan: LayPlan | null,
  texts: CliTexts["lay"],
): string {
  const pieces = problem.pieces.reduce((sum, { count }) => sum + count, 0);
  if (!plan) return texts.laying(name, pieces);
  const length = plan.uses.reduce((sum, use) => sum + use.usedLength, 0);
  return texts.laid(name, (length / 1000).toFixed(3), pieces - copiesLeft(plan), pieces);
}

function copiesLeft({ unplaced }: LayPlan): number {
  return unplaced.reduce((sum, { count }) => sum + count, 0);
}

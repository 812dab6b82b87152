import { purchaseOf } from "../buying/purchase.ts";
import { layFigures } from "../lay/alternatives/layFigures.ts";
import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../lay/problem/layProblem.ts";
import { clothUsed } from "../lay/problem/planSums.ts";
import { arrange } from "../lay/search/arrange/arrange.ts";
import { inSteps } from "../lay/search/breath.ts";
import { allowedTurns } from "../materials/orientations.ts";
import { type CutList, cutListOf } from "../project/cutList.ts";
import type { Project } from "../project/project.ts";
import { layProblemsOf } from "./layProblems.ts";
import { inOtherWay, type OtherWay, otherWays } from "./otherWays.ts";

/** Another way: the cloth it takes off rolls (mm), what is to be paid for it in the smallest coin, and its ruler cuts where a ruler cuts it. */
export interface WeighedWay {
  readonly way: OtherWay;
  readonly length: number;
  readonly toPay: number | null;
  readonly cuts: number | null;
}

/** Evaluations for each other way: about a second each, and the same every time. */
const EFFORT = 200_000;

/** The other ways of a material in which everything finds a place, each laid quickly. Pauses yield nothing. */
export function* weighWays(
  project: Project,
  materialId: string,
): Generator<void, readonly WeighedWay[], undefined> {
  const weighed: WeighedWay[] = [];
  for (const way of otherWays(project, materialId)) {
    yield;
    const changed = inOtherWay({ ...project, pins: [] }, materialId, way);
    const list = cutListOf(changed);
    if (!list.ok || !mayLie(changed, list.value, materialId)) continue;
    const problem = layProblemsOf(changed, list.value).find((each) => each.materialId === materialId);
    const plan = problem === undefined ? null : yield* wholePlan(problem);
    if (problem === undefined || plan === null) continue;
    const material = changed.materials.find(({ id }) => id === materialId)!;
    const { toPay } = purchaseOf(material, plan, project);
    const cuts = layFigures(problem, plan).ruler?.cuts ?? null;
    weighed.push({ way, length: clothUsed(problem, plan), toPay, cuts });
  }
  return weighed;
}

/** Whether the material's grain leaves every piece of it a way to lie. */
function mayLie(project: Project, { pieces }: CutList, materialId: string): boolean {
  const material = project.materials.find(({ id }) => id === materialId);
  if (material === undefined) return false;
  return pieces.every((piece) => piece.materialId !== materialId || allowedTurns(piece.grain, material) !== null);
}

/** A plan found at a quick look; null when a piece finds no place. */
function* wholePlan(problem: LayProblem): Generator<void, LayPlan | null, undefined> {
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: EFFORT }, 1);
  const plan = yield* inSteps(search);
  return plan.unplaced.length > 0 ? null : plan;
}

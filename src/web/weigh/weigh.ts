import { planOffcuts } from "../../core/buying/planOffcuts.ts";
import { purchaseOf } from "../../core/buying/purchase.ts";
import { layProblemsOf } from "../../core/job/layProblems.ts";
import { inOtherWay, otherWays } from "../../core/job/otherWays.ts";
import { clothUsed } from "../../core/lay/alternatives/clothUsed.ts";
import { searchChoices } from "../../core/lay/alternatives/searchChoices.ts";
import { strapsPerMetre } from "../../core/lay/boxes/straps/strapsPerMetre.ts";
import { chooseEngines } from "../../core/lay/engines/chooseEngines.ts";
import type { LayProblem } from "../../core/lay/problem/layProblem.ts";
import { arrange } from "../../core/lay/search/arrange/arrange.ts";
import { allowedTurns } from "../../core/materials/orientations.ts";
import { type CutList, cutListOf } from "../../core/project/cutList.ts";
import type { Project } from "../../core/project/project.ts";
import type { Weighed, WeighedWay, Weighing } from "./protocol.ts";

/** Evaluations for the three choices, and for each other way: about a second each, and the same every time. */
const EFFORT = { choices: 600_000, way: 200_000 };

/** Weighs in small steps; a step yields nothing. */
export function* weigh(asked: Weighing): Generator<void, Weighed[Weighing["kind"]], void> {
  if (asked.kind === "strips") return strapsPerMetre(asked.pieces, [asked.problem]);
  if (asked.kind === "offcuts") {
    const { material, problem, plan } = asked;
    return planOffcuts(material, problem, plan, purchaseOf(material, plan)).flatMap(({ offcuts }) => offcuts);
  }
  if (asked.kind === "choices")
    return yield* last(searchChoices(asked.problem, { evaluations: EFFORT.choices }, 1));
  const { project, materialId } = asked;
  const weighed: WeighedWay[] = [];
  for (const way of otherWays(project, materialId)) {
    yield;
    const changed = inOtherWay({ ...project, pins: [] }, materialId, way);
    const list = cutListOf(changed);
    if (!list.ok || !mayLie(changed, list.value, materialId)) continue;
    const problem = layProblemsOf(changed, list.value).find((each) => each.materialId === materialId);
    const length = problem === undefined ? null : yield* lengthOf(problem);
    if (length !== null) weighed.push({ way, length });
  }
  return weighed;
}

/** Whether the material's grain leaves every piece of it a way to lie. */
function mayLie(project: Project, { pieces }: CutList, materialId: string): boolean {
  const material = project.materials.find(({ id }) => id === materialId);
  if (material === undefined) return false;
  return pieces.every((piece) => piece.materialId !== materialId || allowedTurns(piece.grain, material) !== null);
}

/** Cloth taken off rolls, mm; null when a piece finds no place. */
function* lengthOf(problem: LayProblem): Generator<void, number | null, void> {
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: EFFORT.way }, 1);
  const plan = yield* last(search);
  return plan.unplaced.length > 0 ? null : clothUsed(problem, plan);
}

function* last<R>(search: Generator<unknown, R, undefined>): Generator<void, R, void> {
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
    yield;
  }
}

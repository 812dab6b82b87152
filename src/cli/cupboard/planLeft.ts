import type { LeftOfCloth } from "../../core/cupboard/change.ts";
import { leftOfPlan } from "../../core/cupboard/leftOfPlan.ts";
import { planMark } from "../../core/cupboard/planMark.ts";
import { isPlanDocument, readPlanDocument } from "../../core/job/planDocument/readPlan.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayFinding } from "../../core/problems/layProblems.ts";
import { readInput } from "../inOut/readInput.ts";
import { InputProblem, inputProblem } from "../inOut/toldProblem.ts";
import { CUPBOARD_TEXTS } from "../words/cupboardTexts.ts";

/** A plan file as the cupboard takes it: its project, a mark of its lays, and what it cuts and leaves of each cloth. */
export interface PlanForCupboard {
  readonly project: string;
  readonly plan: string;
  readonly cloths: readonly LeftOfCloth[];
}

/** Rectangles left, as a plan file has them. */
type OffcutsInFile = readonly { stockId: string; offcuts: readonly { x: number; along: number }[] }[];

/**
 * Reads a plan file and has the checker pass every lay in it. Throws `InputProblem` when it is no plan or the checker
 * finds a fault: from a plan that cannot be cut nothing is kept.
 */
export function readPlanFile(path: string): PlanForCupboard {
  const text = readInput(path);
  const data = parsed(text);
  if (!isPlanDocument(data)) throw notAPlan(path);
  const read = readPlanDocument(data);
  if (!read.ok) throw notAPlan(path);
  const faults: LayFinding[] = read.plans.flatMap(({ problem, plan }) => [...checkPlan(problem, plan)]);
  if (faults.length > 0) throw inputProblem(faults);
  const { project, materials } = data as { project?: unknown; materials: readonly { offcuts?: OffcutsInFile }[] };
  return {
    project: typeof project === "string" && project !== "" ? project : path,
    plan: planMark(read.plans.map(({ plan }) => plan)),
    cloths: read.plans.map(({ name, problem, plan }, i): LeftOfCloth => {
      const reach = (stockId: string): number => reachOf(materials[i]?.offcuts, stockId);
      return {
        id: problem.materialId,
        name,
        used: plan.uses.filter(({ usedLength }) => usedLength > 0).map(({ stockId }) => stockId),
        left: leftOfPlan(problem, plan, reach),
      };
    }),
  };
}

/** How far the offcuts of a roll reach: what is bought beyond the pieces is one of them, when it is worth keeping. */
function reachOf(offcuts: OffcutsInFile | undefined, stockId: string): number {
  const own = (offcuts ?? []).find((one) => one.stockId === stockId);
  const ends = (own?.offcuts ?? []).map(({ x, along }) => x + along).filter(Number.isFinite);
  return Math.max(0, ...ends);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function notAPlan(path: string): InputProblem {
  return new InputProblem((language) => [
    { code: "not-a-plan", path, message: CUPBOARD_TEXTS[language].notAPlan(path) },
  ]);
}

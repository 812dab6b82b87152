import { type CostSheet, costSheet } from "../buying/costSheet.ts";
import type { MoneyRules } from "../buying/moneyRules.ts";
import { planOffcuts, type StockOffcuts } from "../buying/planOffcuts.ts";
import { type Purchase, purchaseOf } from "../buying/purchase.ts";
import { polygonArea } from "../geometry/ring.ts";
import { checkPlan } from "../lay/check/checkPlan.ts";
import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import type { LayPlan } from "../lay/problem/layProblem.ts";
import { whyUnplaced } from "../lay/search/arrange/whyUnplaced.ts";
import type { CutMode } from "../lay/search/engine.ts";
import type { LayFinding, LeftOut } from "../problems/layProblems.ts";
import type { Project } from "../project/project.ts";
import { type PlanCut, planCut } from "./planCut.ts";
import type { LayJob } from "./projectJob.ts";

/** A material, what was to be laid on it, and the plan. */
export interface LaidCloth extends LayJob {
  readonly plan: LayPlan;
  /** How it was to be cut; `free` where nothing is said. */
  readonly mode?: CutMode;
}

/** A laid cloth checked and priced. */
export interface JudgedCloth extends LaidCloth {
  /** Faults the checker found: none, or we have a bug. */
  readonly faults: readonly LayFinding[];
  readonly leftOut: readonly LeftOut[];
  readonly cut: PlanCut;
  readonly purchase: Purchase;
  readonly offcuts: readonly StockOffcuts[];
}

/** Has a plan checked, says why pieces were left out, and works out what to buy and what is left over. */
export function judgeCloth(laid: LaidCloth, mode: CutMode, rules: MoneyRules): JudgedCloth {
  const { material, problem, plan } = laid;
  const purchase = purchaseOf(material, plan, rules);
  return {
    ...laid,
    mode,
    faults: checkPlan(problem, plan),
    leftOut: whyUnplaced(problem, plan, (job) => chooseEngines(job, mode)),
    cut: planCut(problem, plan, mode),
    purchase,
    offcuts: planOffcuts(material, problem, plan, purchase),
  };
}

/** A cloth as laid and bought: the part of it that costs hang on. */
export type BoughtCloth = Pick<JudgedCloth, "problem" | "plan" | "purchase">;

/** What the bags of a project cost with these cloths, and the price of one. */
export function costOf(cloths: readonly BoughtCloth[], project: Project): CostSheet {
  return costSheet(
    cloths.map((cloth) => ({ purchase: cloth.purchase, piecesArea: piecesArea(cloth) })),
    project,
  );
}

/** Area of the pieces laid, mm². In several layers the plan shows the top one; beside other stock nothing is said. */
function piecesArea({ problem, plan }: BoughtCloth): number | null {
  const { spread, pieces } = problem;
  if (spread !== undefined && problem.stocks.length > 1) return null;
  const areas = new Map(pieces.map(({ id, outline }) => [id, polygonArea(outline)]));
  return (spread?.layers ?? 1) * plan.placements.reduce((sum, { pieceId }) => sum + areas.get(pieceId)!, 0);
}

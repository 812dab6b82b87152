import { type BagCost, bagCost } from "../buying/bagCost.ts";
import { planOffcuts, type StockOffcuts } from "../buying/planOffcuts.ts";
import { type Purchase, purchaseOf } from "../buying/purchase.ts";
import { checkPlan } from "../lay/check/checkPlan.ts";
import { type CutMode, chooseEngines } from "../lay/engines/chooseEngines.ts";
import type { LayPlan } from "../lay/problem/layProblem.ts";
import { whyUnplaced } from "../lay/search/arrange/whyUnplaced.ts";
import type { LayFinding, LeftOut } from "../problems/layProblems.ts";
import type { Project } from "../project/project.ts";
import { type PlanCut, planCut } from "./planCut.ts";
import type { LayJob } from "./projectJob.ts";

/** A material, what was to be laid on it, and the plan. */
export interface LaidCloth extends LayJob {
  readonly plan: LayPlan;
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
export function judgeCloth(laid: LaidCloth, mode: CutMode): JudgedCloth {
  const { material, problem, plan } = laid;
  const purchase = purchaseOf(material, plan);
  return {
    ...laid,
    faults: checkPlan(problem, plan),
    leftOut: whyUnplaced(problem, plan, (job) => chooseEngines(job, mode)),
    cut: planCut(problem, plan, mode),
    purchase,
    offcuts: planOffcuts(material, problem, plan, purchase),
  };
}

/** What all cloths of a project cost together. */
export function costOf(cloths: readonly Pick<JudgedCloth, "purchase">[], { bags, pricing }: Project): BagCost {
  return bagCost(
    cloths.map(({ purchase }) => purchase),
    bags,
    pricing,
  );
}

import type { MoneyRules } from "../../core/buying/moneyRules.ts";
import type { Offcut } from "../../core/buying/offcuts.ts";
import type { RuleCost } from "../../core/job/ruleCosts.ts";
import type { WeighedWay } from "../../core/job/weighWays.ts";
import type { LayChoice } from "../../core/lay/alternatives/searchChoices.ts";
import type { StripsPerMetre } from "../../core/lay/boxes/straps/strapsPerMetre.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Project } from "../../core/project/project.ts";

/** What the page asks the weighing worker about one material. */
export type Weighing =
  | { readonly kind: "strips"; readonly pieces: readonly CutPiece[]; readonly problem: LayProblem }
  | {
      readonly kind: "offcuts";
      readonly material: Material;
      readonly problem: LayProblem;
      readonly plan: LayPlan;
      readonly rules: MoneyRules;
    }
  | { readonly kind: "choices"; readonly problem: LayProblem }
  | { readonly kind: "ways"; readonly project: Project; readonly materialId: string }
  | { readonly kind: "rules"; readonly project: Project; readonly materialId: string };

/** What comes back, by what was asked. */
export interface Weighed {
  readonly strips: readonly StripsPerMetre[];
  /** Of all stocks, in their order; of each stock largest first. */
  readonly offcuts: readonly Offcut[];
  readonly choices: readonly LayChoice[];
  /** Only ways in which everything finds a place. */
  readonly ways: readonly WeighedWay[];
  /** What each rule about the cloth's pattern costs. */
  readonly rules: readonly RuleCost[];
}

/** Tells the weighing worker to leave off, or to go on where it left off: the processor is wanted elsewhere. */
export interface Rest {
  readonly kind: "rest";
  readonly isResting: boolean;
}

import { planOffcuts } from "../../core/buying/planOffcuts.ts";
import { purchaseOf } from "../../core/buying/purchase.ts";
import { ruleCosts } from "../../core/job/ruleCosts.ts";
import { weighWays } from "../../core/job/weighWays.ts";
import { searchChoices } from "../../core/lay/alternatives/searchChoices.ts";
import { strapsPerMetre } from "../../core/lay/boxes/straps/strapsPerMetre.ts";
import { inSteps } from "../../core/lay/search/breath.ts";
import type { Weighed, Weighing } from "./protocol.ts";

/** Evaluations for the three choices: about a second, and the same every time. */
const CHOICES_EFFORT = 600_000;

/** Weighs in small steps; a step yields nothing. */
export function* weigh(asked: Weighing): Generator<void, Weighed[Weighing["kind"]], undefined> {
  if (asked.kind === "strips") return strapsPerMetre(asked.pieces, [asked.problem]);
  if (asked.kind === "offcuts") {
    const { material, problem, plan, rules } = asked;
    return planOffcuts(material, problem, plan, purchaseOf(material, plan, rules)).flatMap(
      ({ offcuts }) => offcuts,
    );
  }
  if (asked.kind === "choices")
    return yield* inSteps(searchChoices(asked.problem, { evaluations: CHOICES_EFFORT }, 1));
  if (asked.kind === "rules") return yield* ruleCosts(asked.project, asked.materialId);
  return yield* weighWays(asked.project, asked.materialId);
}

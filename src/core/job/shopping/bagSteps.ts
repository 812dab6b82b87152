import type { LayPlan, LayProblem } from "../../lay/problem/layProblem.ts";
import { BREATH, type Breath } from "../../lay/search/breath.ts";
import type { Project } from "../../project/project.ts";
import { jobOf } from "../projectJob.ts";
import { quickPlan } from "../stocks/quickPlan.ts";
import { projectOfCell, type ShopCell, shopRoll } from "./shopCell.ts";
import { type BarredRow, type LaidRow, rowOf } from "./shopRow.ts";
import { type ShopWish, shorterOf } from "./shopTable.ts";

/** What a number of bags takes; `row` is its checked plan. */
export interface BagStep {
  readonly bags: number;
  readonly row: LaidRow;
}

/** How cloth and money grow with the bags: one step for each number from 1 on; or why none can be cut. */
export type BagSteps = { readonly kind: "steps"; readonly steps: readonly BagStep[] } | BarredRow;

/**
 * What 1 … `most` bags take off one new roll, each a plan that the checker has passed. Fewer bags never take more: from
 * a plan for one bag more, that bag's pieces are left out where this is shorter. Yields a breath wherever a host may
 * stop; what was looked at by then is lost, for the last number is laid first.
 *
 * Errors: RangeError for a material that is not there or not sold off a roll.
 * Cost:   one search for each number of bags.
 */
export function* bagSteps(
  project: Project,
  cell: ShopCell,
  most: number,
  wish: Pick<ShopWish, "materialId" | "mode" | "evaluations" | "seed">,
): Generator<Breath, BagSteps, undefined> {
  const material = project.materials.find(({ id }) => id === wish.materialId);
  const roll = material && shopRoll(project, material);
  if (!material || !roll)
    throw new RangeError(`bagSteps: a cloth sold off a roll was expected, got ${wish.materialId}`);
  const steps: BagStep[] = [];
  let more: LayPlan | null = null;
  for (let bags = most; bags >= 1; bags--) {
    yield BREATH;
    const asked = { ...project, bags };
    const job = jobOf(projectOfCell(asked, material, cell, false));
    const lay = job.lays.find((each) => each.material.id === material.id);
    if (job.troubles.length > 0 || lay === undefined)
      return { kind: "barred", cell, troubles: job.troubles, leftOut: [] };
    const found: LayPlan = yield* quickPlan(lay.problem, wish);
    const plan: LayPlan = more === null ? found : shorterOf(lay.problem, found, withoutSpare(lay.problem, more));
    yield BREATH;
    const row = rowOf(cell, job, jobOf(asked), { ...lay, plan, rollId: roll.id }, wish.mode);
    if (row.kind === "barred") return row;
    more = plan;
    steps.unshift({ bags, row });
  }
  return { kind: "steps", steps };
}

/** A plan for more bags with the copies left out that this problem has not. */
function withoutSpare({ pieces }: LayProblem, plan: LayPlan): LayPlan {
  const counts = new Map(pieces.map(({ id, count }) => [id, count]));
  return { ...plan, placements: plan.placements.filter(({ pieceId, copy }) => copy < (counts.get(pieceId) ?? 0)) };
}

/** Most bags that come out of a length of the roll, of those that were looked at; 0 when not one does. */
export function bagsFrom(steps: readonly BagStep[], length: number): number {
  return steps.reduce((most, { bags, row }) => (row.usedLength <= length + 1e-6 ? Math.max(most, bags) : most), 0);
}

/** A length that is bought, what it costs in the smallest coin, and the most bags it makes. */
export interface LengthStep {
  readonly length: number;
  readonly toPay: number | null;
  readonly bags: number;
}

/** The curve's steps: each length that is bought once, with the last of the bags that take it. */
export function lengthSteps(steps: readonly BagStep[]): LengthStep[] {
  return steps
    .filter(({ row }, i) => steps[i + 1]?.row.buyLength !== row.buyLength)
    .map(({ bags, row }) => ({ length: row.buyLength, toPay: row.toPay, bags }));
}

/** Numbers of the bags that cost no cloth: the length for the bag before is enough. */
export function freeBags(steps: readonly BagStep[]): number[] {
  return steps.filter(({ row }, i) => row.buyLength === steps[i - 1]?.row.buyLength).map(({ bags }) => bags);
}

import { checkPlan } from "../../lay/check/checkPlan.ts";
import type { LayPlan, LayProblem } from "../../lay/problem/layProblem.ts";
import { copiesLeftOut, lengthUsed } from "../../lay/problem/planSums.ts";
import { BREATH, type Breath } from "../../lay/search/breath.ts";
import type { CutMode } from "../../lay/search/engine.ts";
import type { Project } from "../../project/project.ts";
import type { ConstructionId } from "../../straps/wish/strapWish.ts";
import { jobOf } from "../projectJob.ts";
import { quickPlan } from "../stocks/quickPlan.ts";
import { projectOfCell, type ShopCell, type SoldWidth, shopRoll } from "./shopCell.ts";
import { type BarredRow, type LaidRow, type RowFigures, rowOf, type ShopRow } from "./shopRow.ts";

/** What a table is to hold; each list in the order of its rows. */
export interface ShopWish {
  readonly materialId: string;
  readonly widths: readonly SoldWidth[];
  readonly constructions: readonly (ConstructionId | null)[];
  readonly directions: readonly ShopCell["direction"][];
  readonly joins: readonly ShopCell["joins"][];
  /** What there is of the cloth is used up first. */
  readonly ownStock: boolean;
  readonly mode: CutMode;
  /** Evaluations for each row. */
  readonly evaluations: number;
  readonly seed: number;
}

/** Evaluations for each row unless told: about a third of a second. */
export const ROW_EFFORT = 60_000;

/**
 * What to buy of a cloth: one row for each way, as they are found, each a plan that the checker has passed. A wider
 * roll never takes more than a narrower one for the same pieces: its plan is taken over where that is shorter. Yields a
 * breath wherever a host may stop; the rows so far stand. The rows depend on the arguments alone.
 *
 * Errors: RangeError for a material that is not there or not sold off a roll.
 * Cost:   widths × constructions × directions × joins searches; one for all ways that come to the same lay problem.
 */
export function* shopTable(project: Project, wish: ShopWish): Generator<ShopRow | Breath, void, undefined> {
  const material = project.materials.find(({ id }) => id === wish.materialId);
  const roll = material && shopRoll(project, material);
  if (!material || !roll)
    throw new RangeError(`shopTable: a cloth sold off a roll was expected, got ${wish.materialId}`);
  const asPlanned = jobOf({ ...project, pins: [], plans: undefined });
  // Ways that come to the same pieces on the same cloth are laid once: straps too short to join, or made so already.
  const known = new Map<string, LayPlan>();
  const widths = [...wish.widths].sort((a, b) => a.width - b.width);
  for (const construction of wish.constructions)
    for (const direction of wish.directions)
      for (const joins of wish.joins) {
        let narrower: LayPlan | null = null;
        for (const sold of widths) {
          yield BREATH;
          const cell: ShopCell = { sold, construction, direction, joins };
          const job = jobOf(projectOfCell(project, material, cell, wish.ownStock));
          const lay = job.lays.find((each) => each.material.id === material.id);
          if (job.troubles.length > 0 || lay === undefined) {
            yield { kind: "barred", cell, troubles: job.troubles, leftOut: [] };
            continue;
          }
          const same = problemText(lay.problem);
          const found: LayPlan = known.get(same) ?? (yield* quickPlan(lay.problem, wish));
          known.set(same, found);
          const plan: LayPlan = narrower === null ? found : shorterOf(lay.problem, found, narrower);
          yield BREATH;
          const row = rowOf(cell, job, asPlanned, { ...lay, plan, rollId: roll.id }, wish.mode);
          if (row.kind === "laid") narrower = plan;
          yield row;
        }
      }
}

/** The same text for the same problem. Cost: O(points). */
function problemText(problem: LayProblem): string {
  return JSON.stringify(problem, (_, value: unknown) =>
    value instanceof Float64Array ? Array.from(value) : value,
  );
}

/** The plan of a narrower roll where it is shorter and the checker passes it on this one. */
export function shorterOf(problem: LayProblem, found: LayPlan, narrower: LayPlan): LayPlan {
  const isShorter = copiesLeftOut(found) > 0 || lengthUsed(narrower) < lengthUsed(found) - 1e-6;
  if (!isShorter) return found;
  const uses = narrower.uses.map((use) => ({
    ...use,
    bound: found.uses.find(({ stockId }) => stockId === use.stockId)?.bound ?? null,
  }));
  const taken = { ...narrower, uses };
  return checkPlan(problem, taken).length === 0 ? taken : found;
}

/** What makes a row the one to take: least money, or least cloth where a price is missing. */
type BestBy = "cost" | "cloth";

/** The row to take. */
export interface BestRow<Row extends RowFigures = LaidRow> {
  readonly row: Row;
  readonly by: BestBy;
  /** How much less is paid than as the project stands, in the smallest coin; null when that is not among the rows. */
  readonly saved: number | null;
  /** Rows that cost the same and fold thicker or take more cloth. */
  readonly alike: number;
}

/** The best of some rows: least to pay, then the thinner strap, then least cloth. Null when none can be cut. */
export function bestRow<Row extends RowFigures = LaidRow>(
  rows: readonly (Row | Pick<BarredRow, "kind" | "cell">)[],
  ownWidth: number,
): BestRow<Row> | null {
  const laid = rows.filter((row): row is Row => row.kind === "laid");
  const by: BestBy = laid.every(({ toPay }) => toPay !== null) ? "cost" : "cloth";
  const weigh = (row: RowFigures): readonly number[] => {
    const cloth = row.buyLength * row.cell.sold.width;
    const less = [row.thickness ?? 0, row.usedLength * row.cell.sold.width];
    return by === "cost" ? [row.toPay!, ...less] : [Math.round(cloth), ...less];
  };
  const [row] = [...laid].sort((a, b) => compare(weigh(a), weigh(b)));
  if (row === undefined) return null;
  const own = laid.find(
    ({ cell: { sold, construction, direction, joins } }) =>
      Math.abs(sold.width - ownWidth) < 0.5 && construction === null && direction === null && joins === null,
  );
  return {
    row,
    by,
    saved: own === undefined || own.toPay === null || row.toPay === null ? null : own.toPay - row.toPay,
    alike: laid.filter((other) => other !== row && weigh(other)[0] === weigh(row)[0]).length,
  };
}

function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}

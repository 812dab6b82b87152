import { purchaseOf } from "../../buying/purchase.ts";
import { polygonArea } from "../../geometry/ring.ts";
import { checkPlan } from "../../lay/check/checkPlan.ts";
import { chooseEngines } from "../../lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../lay/problem/layProblem.ts";
import { whyUnplaced } from "../../lay/search/arrange/whyUnplaced.ts";
import type { CutMode } from "../../lay/search/engine.ts";
import type { Material } from "../../materials/material.ts";
import type { LeftOut } from "../../problems/layProblems.ts";
import type { Problem } from "../../problems/problem.ts";
import type { ProjectJob } from "../projectJob.ts";
import type { ShopCell } from "./shopCell.ts";

/** A cell with its plan, checked and priced. Lengths in mm. */
export interface LaidRow {
  readonly kind: "laid";
  readonly cell: ShopCell;
  readonly material: Material;
  readonly problem: LayProblem;
  readonly plan: LayPlan;
  /** Off the new roll, ends squared and shrinkage allowed for, and the same in the shop's steps. */
  readonly usedLength: number;
  readonly buyLength: number;
  /** The laid length is proven to be the shortest. */
  readonly isProven: boolean;
  /** To be paid for this cloth in the currency's smallest coin; null without a price. */
  readonly toPay: number | null;
  /** Bags that a metre off the roll makes; null when nothing is taken off it. */
  readonly bagsPerMetre: number | null;
  /** Pieces ÷ what is laid of the width between selvedges (the marker efficiency of the trade's books). */
  readonly efficiency: number | null;
  /** Pieces ÷ all that is bought, selvedges and ends too. */
  readonly utilisation: number | null;
  /** The thickest strap of this cloth where it is flat: its layers and thickness; null without straps. */
  readonly layers: number | null;
  readonly thickness: number | null;
  /** Other cloths of which this way takes more or less than the project as it stands, mm² of pieces. */
  readonly elsewhere: readonly { readonly materialId: string; readonly area: number }[];
}

/** A cell that cannot be cut, and why. */
export interface BarredRow {
  readonly kind: "barred";
  readonly cell: ShopCell;
  /** Parts that do not work out that way. */
  readonly troubles: readonly Problem[];
  /** Pieces with no place on such a roll. */
  readonly leftOut: readonly LeftOut[];
}

/** What a laid row says, without its plan. */
export type RowFigures = Omit<LaidRow, "problem" | "plan">;

export type ShopRow = LaidRow | BarredRow;

/** A length this near to its bound is the shortest there is. */
const PROVEN = 1 + 1e-12;

/** A checked and priced row out of a plan. Error when our own plan fails the checker. */
export function rowOf(
  cell: ShopCell,
  job: ProjectJob,
  asPlanned: ProjectJob,
  laid: {
    readonly material: Material;
    readonly problem: LayProblem;
    readonly plan: LayPlan;
    readonly rollId: string;
  },
  mode: CutMode,
): ShopRow {
  const { material, problem, plan, rollId } = laid;
  const leftOut = whyUnplaced(problem, plan, (region) => chooseEngines(region, mode));
  if (leftOut.length > 0) return { kind: "barred", cell, troubles: [], leftOut };
  const faults = checkPlan(problem, plan);
  if (faults.length > 0) throw new Error(`rowOf: the checker refused a plan: ${faults[0]!.code}`);
  const { project } = job;
  const purchase = purchaseOf(material, plan, project);
  const bill = purchase.bills.find(({ stockId }) => stockId === rollId);
  const used = plan.uses.find(({ stockId }) => stockId === rollId);
  const usedLength = bill?.usedLength ?? 0;
  const buyLength = bill?.buyLength ?? 0;
  const laidLength = used?.usedLength ?? 0;
  const area = areaOn(problem, plan, rollId);
  // In several layers the plan shows the top one: every piece counts, and where some lie on other cloth nothing is said.
  const isSpread = problem.spread !== undefined;
  const whole = isSpread ? (problem.stocks.length === 1 ? areaOf(job.pieces, material.id) : null) : area;
  const roll = problem.stocks.find(({ id }) => id === rollId);
  const width = roll?.kind === "roll" ? roll.width : 0;
  const straps = job.straps.filter(({ wish }) => wish.materials.outer === material.id);
  const thickest = straps.reduce<(typeof straps)[0] | null>(
    (most, strap) => (most === null || strap.thickness > most.thickness ? strap : most),
    null,
  );
  return {
    kind: "laid",
    cell,
    material,
    problem,
    plan,
    usedLength,
    buyLength,
    isProven: isAtBound(plan, rollId),
    toPay: purchase.toPay,
    bagsPerMetre: usedLength > 0 ? (1000 * project.bags) / usedLength : null,
    efficiency: laidLength > 0 ? area / (laidLength * width) : null,
    utilisation: buyLength > 0 && whole !== null ? whole / (buyLength * cell.sold.width) : null,
    layers: thickest?.layers ?? null,
    thickness: thickest?.thickness ?? null,
    elsewhere: elsewhere(job, asPlanned, material.id),
  };
}

/** Whether a plan lies on one roll alone, at its proven shortest. */
function isAtBound({ uses }: LayPlan, rollId: string): boolean {
  const touched = uses.filter(({ usedLength }) => usedLength > 0);
  const [use] = touched;
  if (use === undefined) return true;
  return (
    touched.length === 1 && use.stockId === rollId && use.bound !== null && use.usedLength <= use.bound * PROVEN
  );
}

/** Area of the pieces on a stock, in its top layer, mm². */
function areaOn(problem: LayProblem, plan: LayPlan, stockId: string): number {
  const areas = new Map(problem.pieces.map(({ id, outline }) => [id, polygonArea(outline)]));
  return plan.placements
    .filter((placement) => placement.stockId === stockId)
    .reduce((sum, { pieceId }) => sum + areas.get(pieceId)!, 0);
}

function elsewhere(job: ProjectJob, asPlanned: ProjectJob, materialId: string): LaidRow["elsewhere"] {
  return job.project.materials.flatMap(({ id }) => {
    const area = id === materialId ? 0 : areaOf(job.pieces, id) - areaOf(asPlanned.pieces, id);
    return Math.abs(area) < 1 ? [] : [{ materialId: id, area }];
  });
}

/** Area of every piece of a material, mirrored ones too, mm². */
function areaOf(pieces: ProjectJob["pieces"], materialId: string): number {
  return pieces
    .filter((piece) => piece.materialId === materialId)
    .reduce((sum, piece) => sum + (piece.count + piece.mirroredCount) * polygonArea(piece.outline), 0);
}

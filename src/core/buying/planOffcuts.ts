import { ringBox } from "../geometry/box.ts";
import { posePolygon } from "../geometry/pose.ts";
import type { LayPlan, LayProblem, Stock } from "../lay/problem/layProblem.ts";
import type { Material } from "../materials/material.ts";
import { lengthsCut } from "../materials/spread.ts";
import { spreadOf } from "../materials/spreadOf.ts";
import { type Offcut, offcutsOf } from "./offcuts.ts";
import type { Purchase } from "./purchase.ts";

/** What is left of one stock after cutting, in the stock's own frame. */
export interface StockOffcuts {
  readonly stockId: string;
  readonly offcuts: readonly Offcut[];
}

/** Of a plan, what was found of it: looking for them is long, and several that tell of a plan ask. */
const found = new WeakMap<LayPlan, Found>();

interface Found {
  readonly material: Material;
  readonly problem: LayProblem;
  /** What is bought beyond what is used, for every stock of the problem. */
  readonly beyond: readonly number[];
  readonly offcuts: readonly StockOffcuts[];
}

/**
 * Useful rectangles left on every stock that a plan touches; of an open roll, on the length that is bought. Worked out
 * once for a plan of one material and problem and the length that is bought: all are values that nobody changes.
 */
export function planOffcuts(
  material: Material,
  problem: LayProblem,
  plan: LayPlan,
  purchase: Purchase,
): readonly StockOffcuts[] {
  const known = found.get(plan);
  const beyond = problem.stocks.map(({ id }) => surplus(material, purchase, id));
  if (
    known !== undefined &&
    known.material === material &&
    known.problem === problem &&
    known.beyond.every((length, i) => length === beyond[i])
  )
    return known.offcuts;
  const offcuts = offcutsLeft(problem, plan, beyond);
  found.set(plan, { material, problem, beyond, offcuts });
  return offcuts;
}

function offcutsLeft(problem: LayProblem, plan: LayPlan, beyond: readonly number[]): readonly StockOffcuts[] {
  const outlines = new Map(problem.pieces.map((piece) => [piece.id, piece.outline]));
  return problem.stocks.flatMap((stock, i) => {
    const use = plan.uses.find((one) => one.stockId === stock.id);
    if (use === undefined || use.usedLength <= 0) return [];
    const laid = plan.placements
      .filter((placement) => placement.stockId === stock.id)
      .map((placement) => posePolygon(outlines.get(placement.pieceId)!, placement));
    const region = regionOf(stock, use.usedLength + beyond[i]!);
    return [{ stockId: stock.id, offcuts: offcutsOf(region, [...laid, ...stock.flaws]) }];
  });
}

/** Bought beyond what is used, because the shop sells in steps, as it is when laid out. mm. */
function surplus(material: Material, purchase: Purchase, stockId: string): number {
  const { shrinkage } = material;
  // What is bought beyond several lengths lies behind the last of them, not on top.
  if (lengthsCut(spreadOf(material)) > 1) return 0;
  const bill = purchase.bills.find((one) => one.stockId === stockId);
  if (!bill || bill.buyLength === null || bill.usedLength === null) return 0;
  return (bill.buyLength - bill.usedLength) * (shrinkage.when === "before-cutting" ? 1 - shrinkage.lengthwise : 1);
}

function regionOf(stock: Stock, openLength: number): Parameters<typeof offcutsOf>[0] {
  if (stock.kind === "roll") return { length: stock.length ?? openLength, width: stock.width, outline: null };
  const box = ringBox(stock.outline.outer);
  return { length: box.maxX, width: box.maxY, outline: stock.outline };
}

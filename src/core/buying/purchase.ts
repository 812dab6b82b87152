import { polygonArea } from "../geometry/ring.ts";
import { shapePolygon } from "../geometry/shape.ts";
import type { LayPlan } from "../lay/problem/layProblem.ts";
import type { Material, Price } from "../materials/material.ts";
import { lengthsCut } from "../materials/spread.ts";
import { spreadOf } from "../materials/spreadOf.ts";
import type { ClothRoll, ShapedStock } from "../materials/stock.ts";
import { stockCopyId } from "../materials/stock.ts";
import { rollTaken } from "./layerLengths.ts";
import { roundUpTo } from "./pricing.ts";

/** What is taken of one stock. Lengths in mm, areas in mm². */
export interface StockBill {
  readonly stockId: string;
  /** `buy`: an open roll, to be bought; `own`: measured stock that is there already. */
  readonly source: "buy" | "own";
  /** Along the roll, ends squared and shrinkage allowed for; null for leftovers and skins. */
  readonly usedLength: number | null;
  /** What the shop cuts: the used length in whole steps; null when nothing is bought. */
  readonly buyLength: number | null;
  /** Area of the whole leftover or skin, or used length × full width. */
  readonly area: number;
  /** Price of what is bought, or the worth of what is used up at the same price; null without a price for it. */
  readonly cost: number | null;
}

/** What the pieces of one material take, and what is to be paid for it. */
export interface Purchase {
  readonly materialId: string;
  /** Stocks that the plan uses, in its order. */
  readonly bills: readonly StockBill[];
  /** Length to buy, mm; 0 when everything comes from what is there. */
  readonly buyLength: number;
  /** To be paid in the shop; null when something is bought that has no price. */
  readonly toPay: number | null;
  /** Worth of own stock used up; null when some of it has no price. */
  readonly ownWorth: number | null;
}

/** What a plan takes of a material: how much to buy in the shop's steps, and what it costs. */
export function purchaseOf(material: Material, plan: LayPlan): Purchase {
  const bills = plan.uses
    .filter((use) => use.usedLength > 0)
    .flatMap((use) => billOf(material, use.stockId, use.usedLength));
  const cost = (source: StockBill["source"]): number | null =>
    bills
      .filter((bill) => bill.source === source)
      .reduce<number | null>((sum, bill) => (sum === null || bill.cost === null ? null : sum + bill.cost), 0);
  return {
    materialId: material.id,
    bills,
    buyLength: bills.reduce((sum, bill) => sum + (bill.buyLength ?? 0), 0),
    toPay: cost("buy"),
    ownWorth: cost("own"),
  };
}

function billOf(material: Material, stockId: string, usedLength: number): StockBill[] {
  for (const stock of material.stock) {
    if (stock.kind === "roll") {
      if (stock.id === stockId) return [rollBill(material, stock, usedLength)];
    } else if (Array.from({ length: stock.count }, (_, i) => stockCopyId(stock.id, i)).includes(stockId))
      return [pieceBill(material, stock, stockId)];
  }
  return [];
}

/** What is cut off a roll for one layer of a laid length: as it is before the wash, ends squared. mm. */
export function lengthToCut({ shrinkage }: Material, roll: ClothRoll, laidLength: number): number {
  const unwashed = shrinkage.when === "before-cutting" ? laidLength / (1 - shrinkage.lengthwise) : laidLength;
  return unwashed + 2 * roll.squaring;
}

function rollBill(material: Material, roll: ClothRoll, laidLength: number): StockBill {
  const { repeat, price } = material;
  const used = rollTaken(
    lengthToCut(material, roll, laidLength),
    lengthsCut(spreadOf(material)),
    repeat?.along ?? null,
  );
  const buys = roll.length === null;
  // One repeat more, so that the pattern can start where it is wanted (common practice, no source).
  const needed = used + (repeat?.along ?? 0);
  const buyLength = buys ? roundUpTo(needed, price?.basis.kind === "length" ? price.step : 0) : null;
  const area = (buyLength ?? used) * roll.width;
  return {
    stockId: roll.id,
    source: buys ? "buy" : "own",
    usedLength: used,
    buyLength,
    area,
    cost: price && costOf(price, buyLength ?? used, area),
  };
}

function pieceBill(material: Material, stock: ShapedStock, stockId: string): StockBill {
  const polygon = shapePolygon(stock.shape);
  const area = polygonArea(polygon);
  const { price } = material;
  // A leftover of goods sold by length is worth its share of a full width only when that width is known.
  const width = material.stock.find((other) => other.kind === "roll")?.width ?? null;
  const length = width === null ? null : area / width;
  return {
    stockId,
    source: "own",
    usedLength: null,
    buyLength: null,
    area,
    cost: price && costOf(price, length, area),
  };
}

/** Price of a length or an area; null when goods sold by length have none. Areas are rounded up to their step. */
function costOf({ amount, basis, step }: Price, length: number | null, area: number): number | null {
  if (basis.kind === "each") return amount;
  if (basis.kind === "area") return (amount * roundUpTo(area, step)) / basis.mm2;
  return length === null ? null : (amount * length) / basis.mm;
}

import { polygonArea } from "../geometry/ring.ts";
import { shapePolygon } from "../geometry/shape.ts";
import type { LayPlan } from "../lay/problem/layProblem.ts";
import type { Material } from "../materials/material.ts";
import type { Price } from "../materials/price.ts";
import { lengthsCut } from "../materials/spread.ts";
import { spreadOf } from "../materials/spreadOf.ts";
import { type ClothRoll, isBought, type ShapedStock, stockCopyIds } from "../materials/stock.ts";
import { rollTaken } from "./layerLengths.ts";
import { type MoneyRules, sumOrNull, tillPrice } from "./moneyRules.ts";
import { bought, costAt } from "./quantity.ts";

/** What is taken of one stock. Lengths in mm, areas in mm², money in whole smallest coins. */
export interface StockBill {
  readonly stockId: string;
  /** `buy`: an open roll or what is still in the shop; `own`: measured stock that is there already. */
  readonly source: "buy" | "own";
  /** Along the roll, ends squared and shrinkage allowed for; null for leftovers and skins. */
  readonly usedLength: number | null;
  /** What the shop cuts: the used length in whole steps; null when nothing is bought. */
  readonly buyLength: number | null;
  /** Area of the whole leftover or skin, or used length × full width. */
  readonly area: number;
  /** What is paid for it, tax and all, or the worth of what is used up at the same price; null without a price for it. */
  readonly cost: number | null;
}

/** What the pieces of one material take, and what is to be paid for it, in whole smallest coins of the currency. */
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
export function purchaseOf(material: Material, plan: LayPlan, rules: MoneyRules): Purchase {
  const bills = plan.uses
    .filter((use) => use.usedLength > 0)
    .flatMap((use) => billOf(material, use.stockId, use.usedLength, rules));
  const cost = (source: StockBill["source"]): number | null =>
    sumOrNull(bills.filter((bill) => bill.source === source).map((bill) => bill.cost));
  return {
    materialId: material.id,
    bills,
    buyLength: bills.reduce((sum, bill) => sum + (bill.buyLength ?? 0), 0),
    toPay: cost("buy"),
    ownWorth: cost("own"),
  };
}

function billOf(material: Material, stockId: string, usedLength: number, rules: MoneyRules): StockBill[] {
  for (const stock of material.stock) {
    if (stock.kind === "roll") {
      if (stock.id === stockId) return [rollBill(material, stock, usedLength, rules)];
    } else if (stockCopyIds(stock).includes(stockId)) return [pieceBill(material, stock, stockId, rules)];
  }
  return [];
}

/** What is cut off a roll for one layer of a laid length: as it is before the wash, ends squared. mm. */
export function lengthToCut({ shrinkage }: Material, roll: ClothRoll, laidLength: number): number {
  const unwashed = shrinkage.when === "before-cutting" ? laidLength / (1 - shrinkage.lengthwise) : laidLength;
  return unwashed + 2 * roll.squaring;
}

function rollBill(material: Material, roll: ClothRoll, laidLength: number, rules: MoneyRules): StockBill {
  const { repeat } = material;
  const price = roll.price ?? material.price;
  const used = rollTaken(
    lengthToCut(material, roll, laidLength),
    lengthsCut(spreadOf(material)),
    repeat?.along ?? null,
  );
  const source = isBought(roll) ? "buy" : "own";
  if (source === "own")
    return {
      ...pieceFigures(roll.id, source, used * roll.width),
      usedLength: used,
      cost: rollCost(roll, price, used, rules),
    };
  // One repeat more, so that the pattern can start where it is wanted (common practice, no source).
  const needed = used + (repeat?.along ?? 0);
  const whole = price === null ? null : boughtOffRoll(roll, price, needed, rules.currency);
  const buyLength = whole?.length ?? needed;
  return {
    ...pieceFigures(roll.id, source, buyLength * roll.width),
    usedLength: used,
    buyLength,
    cost: whole && tillPrice(whole.cost, rules),
  };
}

function pieceFigures(stockId: string, source: StockBill["source"], area: number): StockBill {
  return { stockId, source, usedLength: null, buyLength: null, area, cost: null };
}

/** Worth of a length of a roll that is there, at what it costs in the shop and to the millimetre. */
function rollCost(roll: ClothRoll, price: Price | null, used: number, rules: MoneyRules): number | null {
  if (price === null) return null;
  const quantity = price.basis.kind === "area" ? used * roll.width : used;
  return tillPrice(costAt(price, quantity, rules.currency), rules);
}

/** What the shop cuts off a roll, and its cost; of a limited roll no more than there is. */
function boughtOffRoll(
  roll: ClothRoll,
  price: Price,
  needed: number,
  currency: string,
): { readonly length: number; readonly cost: number } {
  if (price.basis.kind === "each") return { length: roll.length ?? needed, cost: costAt(price, needed, currency) };
  const per = price.basis.kind === "area" ? roll.width : 1;
  const { quantity, cost } = bought(price, needed * per, currency);
  const length = quantity / per;
  if (roll.length === null || length <= roll.length) return { length, cost };
  return { length: roll.length, cost: costAt(price, roll.length * per, currency) };
}

function pieceBill(material: Material, stock: ShapedStock, stockId: string, rules: MoneyRules): StockBill {
  const area = polygonArea(shapePolygon(stock.shape));
  const price = stock.price ?? material.price;
  const figures = pieceFigures(stockId, isBought(stock) ? "buy" : "own", area);
  if (price === null) return figures;
  if (price.basis.kind !== "length") {
    // Skins are sold by their area, rounded up to its step.
    const { cost } = bought(price, area, rules.currency);
    return { ...figures, cost: tillPrice(cost, rules) };
  }
  // A leftover of goods sold by length is worth its share of a full width only when that width is known.
  const width = material.stock.find((other) => other.kind === "roll")?.width ?? null;
  if (width === null) return figures;
  return { ...figures, cost: tillPrice(costAt(price, area / width, rules.currency), rules) };
}

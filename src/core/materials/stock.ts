import type { Polygon } from "../geometry/ring.ts";
import { type Shape, shapePolygon } from "../geometry/shape.ts";
import type { Price } from "./price.ts";

/** A place no piece may touch: a shape with its own origin at (x, y) on the stock. */
export interface Flaw {
  readonly x: number;
  readonly y: number;
  readonly shape: Shape;
}

/** A line of the cloth's pattern that runs across, so far along the stock, and one that runs along, so far across it. mm. */
export interface FirstLine {
  readonly along: number;
  readonly across: number;
}

/** Stock that is in the shop yet, or has a price of its own. */
interface Priced {
  /** True for a limited roll, a panel cut to size or a skin that is still in the shop: it is paid for when it is used. */
  readonly toBuy?: boolean | undefined;
  /** What this one costs; as the material says when absent. */
  readonly price?: Price | undefined;
}

/**
 * A roll as it lies on the table: x along it from its cut end, y across it from its lower edge, selvedge and all.
 * Flaws are measured from the same corner.
 */
export interface ClothRoll extends Priced {
  readonly kind: "roll";
  readonly id: string;
  /** Full width, mm. */
  readonly width: number;
  /** Width of one selvedge, on either side, mm. */
  readonly selvedge: number;
  /** mm; null when as much as needed can be bought. */
  readonly length: number | null;
  /** Cut off each cut end to square it, mm. */
  readonly squaring: number;
  readonly flaws: readonly Flaw[];
  /** What stands on its label, for finding it on the shelf. */
  readonly label?: string | undefined;
  /** Where a line of the pattern lies on it, from the same corner; as the material says where nothing is said. */
  readonly firstLine?: FirstLine | undefined;
}

/** A remnant or a skin: any outline, x along the lengthwise grain, and how many there are of it. */
export interface ShapedStock extends Priced {
  readonly kind: "remnant" | "skin";
  readonly id: string;
  readonly shape: Shape;
  readonly flaws: readonly Flaw[];
  readonly count: number;
  /** What stands on its label, for finding it on the shelf. */
  readonly label?: string | undefined;
  /** True when it is kept for something else: nothing is laid on it. */
  readonly keptBack?: boolean | undefined;
  /** Where a line of the pattern lies on it; nothing that is matched is cut from it where that is not said. */
  readonly firstLine?: FirstLine | undefined;
}

export type MaterialStock = ClothRoll | ShapedStock;

/** Width between the selvedges, mm. */
export function usableWidth(roll: ClothRoll): number {
  return roll.width - 2 * roll.selvedge;
}

/** The flaw as a polygon on its stock, arcs flattened to within 0.01 mm. */
export function flawPolygon(flaw: Flaw): Polygon {
  return shapePolygon(flaw.shape, flaw.x, flaw.y);
}

/** Id in the lay of the n-th (from 0) of several equal leftovers. */
export function stockCopyId(id: string, copy: number): string {
  return copy === 0 ? id : `${id} (${copy + 1})`;
}

/** Ids in the lay of a stock and the equal ones beside it. */
export function stockCopyIds(stock: MaterialStock): string[] {
  const count = stock.kind === "roll" ? 1 : stock.count;
  return Array.from({ length: count }, (_, copy) => stockCopyId(stock.id, copy));
}

/** Whether a stock has to be paid for: an open roll, or what is still in the shop. */
export function isBought(stock: MaterialStock): boolean {
  return (stock.kind === "roll" && stock.length === null) || stock.toBuy === true;
}

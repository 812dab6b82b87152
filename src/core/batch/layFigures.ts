import { parted } from "../buying/money.ts";
import { sumOrNull } from "../buying/moneyRules.ts";
import { polygonArea } from "../geometry/ring.ts";
import type { JudgedCloth } from "../job/laidCloth.ts";
import { clothUsed } from "../lay/problem/planSums.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import type { StockTaken } from "./together.ts";

/** How a lay came out, in figures. Lengths mm, areas mm²; what is not known is null. */
export interface LayFigures {
  /** Taken off rolls, all cloths together. */
  readonly length: number;
  /** Pieces laid ÷ cloth they lie on. */
  readonly use: number;
  /** (length − bound) ÷ bound over the open rolls that have a bound and on which everything found its place. */
  readonly gap: number | null;
  /** In the smallest coin. */
  readonly toPay: number | null;
  /** Leftovers, skins and limited rolls it lies on. */
  readonly taken: readonly StockTaken[];
}

/** An order's share of a lay. */
export interface OrderShare {
  readonly name: string;
  readonly bags: number;
  /** Pieces to cut, mirror images among them. */
  readonly pieces: number;
  /** Its share of each cloth by the area of its pieces. */
  readonly length: number;
  /** In whole smallest coins; the shares add up to what the lay costs. */
  readonly toPay: number | null;
}

/** The figures of a lay over all its cloths. */
export function figuresOf(laid: readonly JudgedCloth[]): LayFigures {
  const areas = laid.map(areasOf);
  const cloth = areas.reduce((sum, each) => sum + each.cloth, 0);
  const bounded = laid.flatMap(({ plan }) =>
    plan.unplaced.length > 0 ? [] : plan.uses.filter(({ bound, usedLength }) => bound !== null && usedLength > 0),
  );
  const bound = bounded.reduce((sum, use) => sum + use.bound!, 0);
  const length = bounded.reduce((sum, use) => sum + use.usedLength, 0);
  return {
    length: laid.reduce((sum, { problem, plan }) => sum + clothUsed(problem, plan), 0),
    use: cloth === 0 ? 0 : areas.reduce((sum, each) => sum + each.pieces, 0) / cloth,
    gap: bound > 0 ? length / bound - 1 : null,
    toPay: sumOrNull(laid.map(({ purchase }) => purchase.toPay)),
    taken: laid.flatMap(({ material, purchase }) =>
      purchase.bills
        .filter(({ source }) => source === "own")
        .map(({ stockId, usedLength }) => ({ materialId: material.id, stockId, length: usedLength ?? 0 })),
    ),
  };
}

/** What falls to each order: of every cloth as much as its pieces are of all pieces cut from it, by area. */
export function sharesOf(
  laid: readonly JudgedCloth[],
  orders: readonly { readonly name: string; readonly bags: number; readonly pieces: readonly CutPiece[] }[],
): OrderShare[] {
  const areas = laid.map(({ material }) => orders.map(({ pieces }) => areaOn(pieces, material.id)));
  // What every cloth costs, parted into whole coins that add up to it again.
  const paid = laid.map(({ purchase: { toPay } }, c) => (toPay === null ? null : parted(toPay, areas[c]!)));
  return orders.map(({ name, bags, pieces }, i) => {
    const shares = areas.map((ofOrders) => ofOrders[i]! / ofOrders.reduce((sum, area) => sum + area, 0));
    return {
      name,
      bags,
      pieces: pieces.reduce((sum, { count, mirroredCount }) => sum + count + mirroredCount, 0),
      length: laid.reduce((sum, { problem, plan }, c) => sum + shares[c]! * clothUsed(problem, plan), 0),
      toPay: sumOrNull(paid.map((parts) => (parts === null ? null : parts[i]!))),
    };
  });
}

function areaOn(pieces: readonly CutPiece[], materialId: string): number {
  return pieces
    .filter((piece) => piece.materialId === materialId)
    .reduce((sum, { outline, count, mirroredCount }) => sum + polygonArea(outline) * (count + mirroredCount), 0);
}

function areasOf({ problem, plan }: JudgedCloth): { readonly pieces: number; readonly cloth: number } {
  const outlines = new Map(problem.pieces.map(({ id, outline }) => [id, polygonArea(outline)]));
  const lengths = new Map(plan.uses.map(({ stockId, usedLength }) => [stockId, usedLength]));
  return {
    pieces: plan.placements.reduce((sum, { pieceId }) => sum + outlines.get(pieceId)!, 0),
    cloth: problem.stocks.reduce((sum, stock) => {
      const length = lengths.get(stock.id) ?? 0;
      if (length === 0) return sum;
      return sum + (stock.kind === "roll" ? stock.width * length : polygonArea(stock.outline));
    }, 0),
  };
}

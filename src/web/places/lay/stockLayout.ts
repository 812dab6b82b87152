import { type Box, boxOfAll, ringBox } from "../../../core/geometry/box.ts";
import type { LayPlan, LayProblem, Stock } from "../../../core/lay/problem/layProblem.ts";

/** A stock as it lies on the table: its own box, and how far it is moved up from its own frame. */
export interface StockOnTable {
  readonly stock: Stock;
  /** In the stock's own frame, mm. An open roll ends a little beyond what is used of it. */
  readonly box: Box;
  readonly offsetY: number;
  /** Used length; 0 when nothing lies on it. */
  readonly used: number;
  /** Proven shortest length, or null. */
  readonly bound: number | null;
}

/** Free table above a stock, as a share of its width, and at least so many mm. */
const BETWEEN = 0.1;
const LEAST_BETWEEN = 60;

/** All stocks of a problem on one table: first on top; the last, the roll to be bought, lies with its edge at zero. */
export function stockLayout(problem: LayProblem, plan: LayPlan | null): readonly StockOnTable[] {
  const laid: StockOnTable[] = [];
  let bottom = 0;
  for (const stock of problem.stocks.toReversed()) {
    const use = plan?.uses.find(({ stockId }) => stockId === stock.id);
    const used = use?.usedLength ?? 0;
    const box = stock.kind === "roll" ? rollBox(stock.width, stock.length, used) : ringBox(stock.outline.outer);
    const height = box.maxY - box.minY;
    laid.unshift({ stock, box, offsetY: bottom - box.minY, used, bound: use?.bound ?? null });
    bottom += height + Math.max(BETWEEN * height, LEAST_BETWEEN);
  }
  return laid;
}

/** The box round all stocks on the table. */
export function tableBox(stocks: readonly StockOnTable[]): Box {
  if (stocks.length === 0) return { minX: 0, minY: 0, maxX: 100, maxY: 0 };
  return boxOfAll(
    stocks.map(({ box, offsetY }) => ({ ...box, minY: box.minY + offsetY, maxY: box.maxY + offsetY })),
  );
}

function rollBox(width: number, length: number | null, used: number): Box {
  const shown = length ?? Math.max(used * 1.06, used + 60, width * 0.5);
  return { minX: 0, minY: 0, maxX: shown, maxY: width };
}

/** The stock whose band of the table holds the point, or the nearest one. */
export function stockAt(stocks: readonly StockOnTable[], y: number): StockOnTable | null {
  let nearest: StockOnTable | null = null;
  let least = Infinity;
  for (const laid of stocks) {
    const bottom = laid.box.minY + laid.offsetY;
    const top = laid.box.maxY + laid.offsetY;
    const distance = y < bottom ? bottom - y : y > top ? y - top : 0;
    if (distance < least) {
      least = distance;
      nearest = laid;
    }
  }
  return nearest;
}

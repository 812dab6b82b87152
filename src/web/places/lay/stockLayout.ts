import { type Box, boxOfAll, ringBox } from "../../../core/geometry/box.ts";
import type { LayPlan, LayProblem, Stock } from "../../../core/lay/problem/layProblem.ts";

/** A stock as it lies on the table: its own box, and how far it is moved along and up from its own frame. */
export interface StockOnTable {
  readonly stock: Stock;
  /** In the stock's own frame, mm. An open roll ends a little beyond what is used of it. */
  readonly box: Box;
  readonly offsetX: number;
  readonly offsetY: number;
  /** Used length; 0 when nothing lies on it. */
  readonly used: number;
  /** Proven shortest length, or null. */
  readonly bound: number | null;
}

/** Free table above a stock, as a share of its width, and at least so many mm. */
const BETWEEN = 0.1;
const LEAST_BETWEEN = 60;
/** How much wider than high leftovers without a roll lie together. */
const WIDE = 1.5;

/**
 * All stocks of a problem on one table: leftovers in rows in their order, rolls in rows of their own, the last, the one
 * to be bought, with its edge at zero. Leftovers lie above the rolls, in rows no longer than those, or `beside` them,
 * before their cut ends.
 */
export function stockLayout(problem: LayProblem, plan: LayPlan | null, beside = false): readonly StockOnTable[] {
  const bare = problem.stocks.map((stock): StockOnTable => {
    const use = plan?.uses.find(({ stockId }) => stockId === stock.id);
    const used = use?.usedLength ?? 0;
    const box = stock.kind === "roll" ? rollBox(stock.width, stock.length, used) : ringBox(stock.outline.outer);
    return { stock, box, offsetX: -box.minX, offsetY: 0, used, bound: use?.bound ?? null };
  });
  const rolls = bare.filter(({ stock }) => stock.kind === "roll");
  const leftovers = bare.filter(({ stock }) => stock.kind !== "roll");
  const rollRows = rolls.map((roll) => [roll]);
  const isApart = beside && rolls.length > 0 && leftovers.length > 0;
  const below = stacked(isApart ? rollRows : [...rowsOf(leftovers, roomOf(rolls, leftovers)), ...rollRows]);
  const own = isApart ? stacked(rowsOf(leftovers, roomOf([], leftovers))) : [];
  const shift = own.length === 0 ? 0 : tableBox(own).maxX + 2 * LEAST_BETWEEN;
  const laid = [...below, ...own.map((each) => ({ ...each, offsetX: each.offsetX - shift }))];
  return problem.stocks.map(({ id }) => laid.find(({ stock }) => stock.id === id)!);
}

/** Whether everything is seen larger in a view so much wider than high with the leftovers beside the rolls. */
export function isBesideLarger(problem: LayProblem, plan: LayPlan | null, aspect: number): boolean {
  const scale = (beside: boolean): number => {
    const { minX, maxX, minY, maxY } = tableBox(stockLayout(problem, plan, beside));
    return Math.min(aspect / (maxX - minX), 1 / (maxY - minY));
  };
  return scale(true) > scale(false);
}

/** Rows one above the other, the last at the bottom. */
function stacked(rows: readonly (readonly StockOnTable[])[]): readonly StockOnTable[] {
  const laid: StockOnTable[] = [];
  let bottom = 0;
  for (const row of rows.toReversed()) {
    const height = Math.max(...row.map(({ box }) => box.maxY - box.minY));
    let along = 0;
    for (const own of row) {
      laid.push({ ...own, offsetX: along - own.box.minX, offsetY: bottom - own.box.minY });
      along += lengthOf(own) + LEAST_BETWEEN;
    }
    bottom += height + Math.max(BETWEEN * height, LEAST_BETWEEN);
  }
  return laid;
}

function lengthOf({ box }: StockOnTable): number {
  return box.maxX - box.minX;
}

/** How long a row of leftovers may be: as the longest roll; without one so that all together are a little wide. */
function roomOf(rolls: readonly StockOnTable[], leftovers: readonly StockOnTable[]): number {
  if (rolls.length > 0) return Math.max(...rolls.map(lengthOf));
  const area = leftovers.reduce((sum, each) => sum + lengthOf(each) * (each.box.maxY - each.box.minY), 0);
  return WIDE * Math.sqrt(area);
}

function rowsOf(leftovers: readonly StockOnTable[], room: number): readonly (readonly StockOnTable[])[] {
  const rows: StockOnTable[][] = [];
  let taken = Infinity;
  for (const each of leftovers) {
    const length = lengthOf(each) + LEAST_BETWEEN;
    if (taken + length > room + LEAST_BETWEEN) {
      rows.push([]);
      taken = 0;
    }
    rows.at(-1)!.push(each);
    taken += length;
  }
  return rows;
}

/** The box round all stocks on the table. */
export function tableBox(stocks: readonly StockOnTable[]): Box {
  if (stocks.length === 0) return { minX: 0, minY: 0, maxX: 100, maxY: 0 };
  return boxOfAll(
    stocks.map(({ box, offsetX, offsetY }) => ({
      minX: box.minX + offsetX,
      maxX: box.maxX + offsetX,
      minY: box.minY + offsetY,
      maxY: box.maxY + offsetY,
    })),
  );
}

function rollBox(width: number, length: number | null, used: number): Box {
  const shown = length ?? Math.max(used * 1.06, used + 60, width * 0.5);
  return { minX: 0, minY: 0, maxX: shown, maxY: width };
}

/** The stock that holds the point of the table, or the nearest one. */
export function stockAt(stocks: readonly StockOnTable[], x: number, y: number): StockOnTable | null {
  const beyond = (low: number, high: number, at: number): number => Math.max(0, low - at, at - high);
  let nearest: StockOnTable | null = null;
  let least = Infinity;
  for (const laid of stocks) {
    const { box, offsetX, offsetY } = laid;
    // An open roll goes on beyond what is drawn of it.
    const isOpen = laid.stock.kind === "roll" && laid.stock.length === null;
    const far = isOpen ? Infinity : box.maxX + offsetX;
    const distance = Math.hypot(
      beyond(box.minX + offsetX, far, x),
      beyond(box.minY + offsetY, box.maxY + offsetY, y),
    );
    if (distance < least) {
      least = distance;
      nearest = laid;
    }
  }
  return nearest;
}

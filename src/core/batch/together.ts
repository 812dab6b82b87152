import type { ProjectJob } from "../job/projectJob.ts";
import type { Material } from "../materials/material.ts";
import type { MaterialStock } from "../materials/stock.ts";

/**
 * Which orders are laid on one cloth: none; those due on the same day; or all. Never those of different shades, and
 * never those whose materials, stock, gap or settings differ.
 */
export const TOGETHER = ["none", "due", "all"] as const;

export type Together = (typeof TOGETHER)[number];

/** Why an order that could lie with others is laid by itself. */
export type AloneReason = "pins" | "matched" | "shade-band";

/** What is kept of an order that has been worked out, to plan with. */
export interface PlannedOrder {
  readonly row: number;
  readonly name: string;
  readonly due: string | null;
  readonly shade: string | null;
  readonly pieces: number;
  readonly alone: AloneReason | null;
  readonly cloth: BatchCloth;
  /** Materials that pieces are cut from. */
  readonly uses: readonly string[];
}

/** What orders must have in common to be laid together; one for all orders that have it. */
export interface BatchCloth {
  readonly key: string;
  readonly materials: readonly Material[];
}

/** Orders that are laid together, in the table's order. */
export interface OrderLay {
  readonly orders: readonly PlannedOrder[];
  /** Stock that another lay has been given: by material, the ids of stock that this one leaves alone. */
  readonly withheld: Readonly<Record<string, readonly string[]>>;
  /** Measured stock that it may use. */
  readonly measured: readonly MeasuredStock[];
}

/** A leftover, a skin or a limited roll. */
export interface MeasuredStock {
  readonly materialId: string;
  readonly stockId: string;
  /** The same for the same stock in every lay. */
  readonly key: string;
  /** mm of a roll without flaws, from which one lay is cut after the other; null of anything else. */
  readonly length: number | null;
}

/** Remembers each cloth once. */
export class BatchCloths {
  readonly #known = new Map<string, BatchCloth>();

  /** What a job's pieces are laid on, the same object for all jobs that have the same. */
  of({ project }: ProjectJob): BatchCloth {
    const { materials, gap, margin, leastStrip, output, currency, pricing, unit } = project;
    const key = JSON.stringify([materials, gap, margin, leastStrip, output, currency, pricing, unit]);
    const known = this.#known.get(key) ?? { key, materials };
    this.#known.set(key, known);
    return known;
  }
}

/** What planning needs to know of an order's job. */
export function plannedOrder(
  order: Pick<PlannedOrder, "row" | "name" | "due" | "shade">,
  job: ProjectJob,
  cloths: BatchCloths,
): PlannedOrder {
  const { row, name, due, shade } = order;
  const isMatched = job.lays.some(
    ({ problem }) => problem.pattern !== undefined || problem.pieces.some(({ match }) => match !== undefined),
  );
  const isBanded = job.lays.some(({ problem }) => problem.shade !== undefined);
  const alone = job.project.pins.length > 0 ? "pins" : isMatched ? "matched" : isBanded ? "shade-band" : null;
  const pieces = job.pieces.reduce((sum, { count, mirroredCount }) => sum + count + mirroredCount, 0);
  return {
    row,
    name,
    due,
    shade,
    pieces,
    alone,
    cloth: cloths.of(job),
    uses: job.lays.map(({ material }) => material.id),
  };
}

/** Pieces laid in one go: more take long to search and are hard to keep apart on the table. */
const MOST_TOGETHER = 1000;

/**
 * The lays of a batch. Orders laid together are split where they come to more than 1,000 pieces. Measured stock is
 * there once, whatever the shade: the first lay that can use it gets it, later ones lie on the open roll of the same
 * material.
 */
export function orderLays(orders: readonly PlannedOrder[], together: Together): OrderLay[] {
  const lays: PlannedOrder[][] = [];
  const open = new Map<string, PlannedOrder[]>();
  const numbers = new Map<BatchCloth, number>();
  for (const order of orders) {
    const cloth = numbers.get(order.cloth) ?? numbers.size;
    numbers.set(order.cloth, cloth);
    const key = JSON.stringify([cloth, order.shade, together === "due" ? order.due : null]);
    const before = together === "none" || order.alone !== null ? undefined : open.get(key);
    const sum = (before ?? []).reduce((pieces, other) => pieces + other.pieces, 0);
    if (before !== undefined && sum + order.pieces <= MOST_TOGETHER) before.push(order);
    else {
      const lay = [order];
      lays.push(lay);
      if (order.alone === null) open.set(key, lay);
    }
  }
  return lays.map(stockSharer());
}

/**
 * Shares measured stock out among lays that come one after the other, each its orders; what a lay gets depends only on
 * those before it. Orders that are all laid by themselves (`none`) can so be given out as they are read.
 */
export function stockSharer(): (orders: readonly PlannedOrder[]) => OrderLay {
  const given = new Set<string>();
  return (orders) => {
    const { cloth } = orders[0]!;
    const uses = new Set(orders.flatMap((order) => order.uses));
    const withheld: Record<string, string[]> = {};
    const measured: MeasuredStock[] = [];
    for (const material of cloth.materials.filter(({ id }) => uses.has(id))) {
      const hasOpenRoll = material.stock.some((stock) => stock.kind === "roll" && stock.length === null);
      for (const stock of material.stock.filter(isMeasured)) {
        const key = JSON.stringify([material.id, stock]);
        if (hasOpenRoll && given.has(key)) withheld[material.id] = [...(withheld[material.id] ?? []), stock.id];
        else {
          const isWhole = stock.kind === "roll" && stock.flaws.length === 0;
          measured.push({ materialId: material.id, stockId: stock.id, key, length: isWhole ? stock.length : null });
        }
        given.add(key);
      }
    }
    return { orders, withheld, measured };
  };
}

/** What a lay took of its measured stock. */
export interface StockTaken {
  readonly materialId: string;
  readonly stockId: string;
  /** mm along it; the whole of anything but a roll. */
  readonly length: number;
}

/**
 * Of every lay the stock that lays before it have used up: there is not enough for all. A roll without flaws is enough
 * for lays that together are no longer; of anything else there is one.
 */
export function contestedStock(
  lays: readonly { readonly measured: readonly MeasuredStock[]; readonly taken: readonly StockTaken[] }[],
): (readonly string[])[] {
  const left = new Map<string, number>();
  return lays.map(({ measured, taken }) =>
    measured
      .filter(({ materialId, stockId, key, length }) => {
        const own = taken.filter((one) => one.materialId === materialId && isOf(one.stockId, stockId));
        if (own.length === 0) return false;
        const before = left.get(key) ?? length ?? 1;
        const needed = length === null ? 1 : own.reduce((sum, one) => sum + one.length, 0);
        if (needed > before + 1e-6) return true;
        left.set(key, before - needed);
        return false;
      })
      .map(({ stockId }) => stockId),
  );
}

/** Whether it is that stock, or one of several of its kind. */
function isOf(stockId: string, stock: string): boolean {
  return stockId === stock || /^ \(\d+\)$/u.test(stockId.startsWith(stock) ? stockId.slice(stock.length) : "");
}

/** Stock that comes to an end: a leftover, a skin or a limited roll that is in use. */
function isMeasured(stock: MaterialStock): boolean {
  return stock.kind === "roll" ? stock.length !== null : !stock.keptBack;
}

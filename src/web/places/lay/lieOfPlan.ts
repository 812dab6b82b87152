import { type Box, boxesOverlap, grownBox } from "../../../core/geometry/box.ts";
import type { LayPlan, LayProblem, StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import { keyOf, placedBox } from "./moves.ts";

/** A piece where it lies. */
export interface Lying {
  readonly key: string;
  readonly placement: StockPlacement;
  readonly box: Box;
}

/** Where every piece of a plan lies: worked out once a plan, asked at every step of a hand. */
export interface LieOfPlan {
  readonly byKey: ReadonlyMap<string, Lying>;
  readonly byStock: ReadonlyMap<string, readonly Lying[]>;
}

const NOWHERE: LieOfPlan = { byKey: new Map(), byStock: new Map() };
const known = new WeakMap<LayPlan, LieOfPlan>();

/** The lie of a plan, remembered as long as the plan is. Cost O(pieces · points) the first time. */
export function lieOfPlan(problem: LayProblem, plan: LayPlan | null): LieOfPlan {
  if (plan === null) return NOWHERE;
  const old = known.get(plan);
  if (old !== undefined) return old;
  const byStock = new Map<string, Lying[]>(problem.stocks.map(({ id }) => [id, []]));
  const byKey = new Map<string, Lying>();
  for (const placement of plan.placements) {
    const lying = { key: keyOf(placement), placement, box: placedBox(problem, placement) };
    byKey.set(lying.key, lying);
    byStock.get(placement.stockId)?.push(lying);
  }
  const lie = { byKey, byStock };
  known.set(plan, lie);
  return lie;
}

/** What lies within `reach` mm of a box on a stock, but for the piece itself. */
export function lyingNear(lie: LieOfPlan, stockId: string, box: Box, reach: number, ownKey: string): Lying[] {
  const near: Lying[] = [];
  for (const lying of lie.byStock.get(stockId) ?? []) {
    if (boxesOverlap(grownBox(lying.box, reach), box) && lying.key !== ownKey) near.push(lying);
  }
  return near;
}

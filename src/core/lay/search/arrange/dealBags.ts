import { ringBox } from "../../../geometry/box.ts";
import { poseRing } from "../../../geometry/pose.ts";
import type { LayPlan, LayProblem, StockPlacement, StockUse, Unplaced } from "../../problem/layProblem.ts";

/** A plan on one stock whose copies are shared out among bags. */
export interface Dealt {
  readonly placements: readonly StockPlacement[];
  /** Length used of the stock, and the proven shortest, mm. */
  readonly length: number;
  readonly bound: number | null;
  /** The longest stretch along the stock over which the parts of one bag lie, mm. */
  readonly widest: number;
}

/** A placement and where it begins and ends along its stock. */
interface Laid {
  readonly place: StockPlacement;
  readonly from: number;
  readonly to: number;
}

/**
 * Shares copies of a plan on one stock out among bags: those of each piece in their order along it, so that the first bag
 * has the foremost of all. No other sharing has a shorter longest stretch where every bag has one of each. O(n log n).
 */
export function dealt(problem: LayProblem, plan: LayPlan, bags: number): Dealt {
  const stretches = new Map<number, readonly [number, number]>();
  const placements = problem.pieces.flatMap(({ id, count }) => {
    const laid = laidOf(problem, plan, id).sort((a, b) => a.from + a.to - b.from - b.to);
    return laid.map(({ place, from, to }, copy): StockPlacement => {
      const bag = Math.floor((copy * bags) / count);
      const [low, high] = stretches.get(bag) ?? [from, to];
      stretches.set(bag, [Math.min(low, from), Math.max(high, to)]);
      return { ...place, copy };
    });
  });
  const widest = Math.max(0, ...[...stretches.values()].map(([low, high]) => high - low));
  return { placements, widest, length: plan.uses[0]!.usedLength, bound: plan.uses[0]!.bound };
}

function laidOf({ pieces }: LayProblem, { placements }: LayPlan, pieceId: string): Laid[] {
  const { outer } = pieces.find(({ id }) => id === pieceId)!.outline;
  return placements
    .filter((place) => place.pieceId === pieceId)
    .map((place) => {
      const { minX, maxX } = ringBox(poseRing(outer, place));
      return { place, from: minX, to: maxX };
    });
}

/**
 * A plan round pieces that were laid by hand: these keep their numbers, the others are numbered along the stocks. Of bags
 * that do not keep to their band on one stock only what was laid by hand stays.
 */
export function withinBands(problem: LayProblem, plan: LayPlan): LayPlan {
  const { pieces, stocks, pinned, margin } = problem;
  const { bags, band } = problem.shade!;
  const order = new Map(stocks.map(({ id }, i) => [id, i]));
  const isPinned = ({ pieceId, copy }: StockPlacement): boolean =>
    pinned.some((pin) => pin.pieceId === pieceId && pin.copy === copy);
  const all = pieces.flatMap(({ id, count }) => {
    const laid = laidOf(problem, plan, id);
    const byHand = laid.filter(({ place }) => isPinned(place));
    const taken = new Set(byHand.map(({ place }) => place.copy));
    const free = Array.from({ length: count }, (_, copy) => copy).filter((copy) => !taken.has(copy));
    const others = laid
      .filter(({ place }) => !isPinned(place))
      .sort((a, b) => order.get(a.place.stockId)! - order.get(b.place.stockId)! || a.from - b.from)
      .map((one, i) => ({ ...one, place: { ...one.place, copy: free[i]! } }));
    return [...byHand, ...others].map((one) => ({ ...one, bag: Math.floor((one.place.copy * bags) / count) }));
  });
  const wrong = new Set(
    Array.from({ length: bags }, (_, bag) => bag).filter((bag) => {
      const own = all.filter((one) => one.bag === bag);
      const stretch = Math.max(...own.map(({ to }) => to)) - Math.min(...own.map(({ from }) => from));
      return own.length > 0 && (stretch > band || new Set(own.map(({ place }) => place.stockId)).size > 1);
    }),
  );
  const kept = all.filter(({ bag, place }) => !wrong.has(bag) || isPinned(place));
  if (kept.length === all.length) return { ...plan, placements: kept.map(({ place }) => place) };
  const uses = plan.uses.map(({ stockId }): StockUse => {
    const ends = kept.filter(({ place }) => place.stockId === stockId).map(({ to }) => to);
    return { stockId, usedLength: ends.length === 0 ? 0 : Math.max(...ends) + margin, bound: null };
  });
  const unplaced = pieces.flatMap(({ id, count }): Unplaced[] => {
    const missing = count - kept.filter(({ place }) => place.pieceId === id).length;
    const reason = plan.unplaced.find(({ pieceId }) => pieceId === id)?.reason ?? "band-too-short";
    return missing === 0 ? [] : [{ pieceId: id, count: missing, reason }];
  });
  return { ...plan, placements: kept.map(({ place }) => place), unplaced, uses };
}

import type { PlacedRectangle } from "../../../problem/rectangles/rectangleJob.ts";
import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { layInSpaces, type SpaceBuffers, spaceBuffers } from "./freeSpaces.kernel.ts";

/** Larger jobs are left to the skyline: the work grows with pieces times free spaces. */
const MOST_PIECES = 600;
/** Halvings of the stretch between bound and best plan for each order. */
const HALVINGS = 6;

/** Told of every complete plan; answers the best end known, units. */
export type OfferPlan = (end: number, rectangles: readonly PlacedRectangle[]) => number;

/**
 * Plans that fill gaps far behind the front, which a skyline cannot: pieces of each order go into the maximal free
 * rectangles, by least end once and by closest fit at halved lengths between `bound` and the best end. Yields looks.
 * Good where wide pieces leave long gaps beside them.
 */
export function* freeSpacePlans(
  tables: SearchTables,
  orders: readonly Int32Array[],
  bound: number,
  best: number,
  offer: OfferPlan,
): Generator<number, void, void> {
  if (tables.pieces > MOST_PIECES || tables.blocked.length > 0) return;
  const buffers = spaceBuffers(tables);
  const { result } = buffers;
  let end = best;
  for (const order of orders) {
    layInSpaces(tables, order, 2 * best, false, buffers);
    if (result[0] === order.length) end = offer(result[1]!, laidRectangles(tables, buffers));
    yield result[2]!;
  }
  for (const order of orders) {
    let low = bound;
    for (let k = 0; k < HALVINGS && low < end; k++) {
      const cap = Math.floor((low + end - 1) / 2);
      layInSpaces(tables, order, cap, true, buffers);
      if (result[0] === order.length) end = offer(result[1]!, laidRectangles(tables, buffers));
      else low = cap + 1;
      yield result[2]!;
    }
  }
}

function laidRectangles(tables: SearchTables, buffers: SpaceBuffers): PlacedRectangle[] {
  const { outWay, outAlong, outAcross, result } = buffers;
  return Array.from(outWay.subarray(0, result[0]!), (way, i) => ({
    size: tables.waySize[way]!,
    way: tables.wayIndex[way]!,
    along: outAlong[i]!,
    across: outAcross[i]!,
  }));
}

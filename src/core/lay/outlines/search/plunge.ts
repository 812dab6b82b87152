import type { Pause } from "../../search/breath.ts";
import { copySpots, emptySpots, type WorkLayout } from "../layout/workLayout.ts";
import type { Separator } from "./separate.ts";

/** Share of the cloth covered that is tried at first. */
const FIRST_DENSITY = 0.74;
/** Passes without progress before a length is given up, and how much longer the next one is. */
const PATIENCE = 12;
const LONGER = 1.05;

/**
 * From a complete layout with much room between the copies to one nearly as short as first tried: all are pushed
 * together at once, the overlaps are taken out, and only if that fails some length is given back. Leaves the shortest
 * layout found in the state.
 */
export function* plunge(state: WorkLayout, separator: Separator): Generator<Pause, void> {
  const { job, spots, count } = state;
  const { minX, minY, maxY } = job.window;
  const start = emptySpots(count);
  copySpots(spots, start);
  const startEnd = spots.maxX;
  const startMax = state.maxX;
  let length = Math.max(state.laidArea(spots) / (FIRST_DENSITY * (maxY - minY)), state.leastEnd() - minX);
  let from = spots.maxX - minX;
  separator.isFast = true;
  separator.resetWeights();
  while (minX + length < startEnd) {
    const scale = length / from;
    state.maxX = minX + length;
    spots.maxX = state.maxX;
    for (let i = 0; i < count; i++)
      state.placeWithin(i, spots.variant[i]!, minX + (spots.x[i]! - minX) * scale, spots.y[i]!);
    yield* separator.measureAll();
    if (yield* separator.run(PATIENCE)) {
      spots.maxX = state.end();
      return;
    }
    from = length;
    length *= LONGER;
    copySpots(separator.leastSpots, spots);
  }
  copySpots(start, spots);
  state.maxX = startMax;
}

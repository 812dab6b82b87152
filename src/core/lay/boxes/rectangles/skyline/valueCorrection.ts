import type { PlacedRectangle } from "../../../problem/rectangles/rectangleJob.ts";
import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { power, type Rng } from "../../../search/rng.ts";
import { fillRows, type RowFillBuffers, rowFillBuffers } from "./rowFill.kernel.ts";
import { UNCAPPED } from "./skylineDecode.kernel.ts";

/** Larger jobs are left to the others: a fill takes longer than a turn may. */
const MOST_WORK = 4e8;
/** Least mean extent across, as a share of the roll and weighted by area, of pieces that make few to a row. */
const WIDE = 0.4;
/** Fills without a shorter plan after which worths are drawn afresh. */
const STALE = 300;
/** Steps of the knapsack that take as long as one look of the other searches. */
const STEPS_PER_LOOK = 12;

/** Told of every complete plan shorter than those before. */
export type OfferFill = (end: number, rectangles: () => readonly PlacedRectangle[]) => void;

/** A search by row fills; see `valueCorrection`. */
export interface ValueCorrection {
  /** Spends some `looks` on fills; yields what was spent after each. */
  turn(looks: number, offer: OfferFill): Generator<number, void, void>;
}

/**
 * Plans by filling rows with the pieces worth most, worths corrected after every plan: pieces of rows that wasted
 * cloth become worth more, so they are laid earlier in the next. Only for wide panels, where few pieces lie side by
 * side: null for other jobs, for jobs too large, and with blocked boxes.
 *
 * Source: G. Belov, G. Scheithauer & E. A. Mukhacheva 2008, JORS 59, 823–832 (sequential value correction, from
 * memory; how worths are corrected is our own).
 */
export function valueCorrection(tables: SearchTables, rng: Rng): ValueCorrection | null {
  if (tables.blocked.length > 0 || meanAcross(tables) < WIDE * tables.width) return null;
  const buffers = rowFillBuffers(tables);
  if (tables.pieces * tables.pieces * (buffers.value.length - 1) > MOST_WORK) return null;
  const own = new Float64Array(tables.ways);
  const worth = new Float64Array(tables.ways);
  let best = UNCAPPED;
  let stale = STALE;

  function drawWorths(): void {
    const byAcross = 1 + 0.2 * rng.unit();
    const byAlong = [0, 0.5, 1, 1][rng.below(4)]!;
    for (let way = 0; way < tables.ways; way++) {
      own[way] = power(tables.wayAcross[way]!, byAcross) * power(tables.wayAlong[way]!, byAlong);
      worth[way] = own[way]! * (0.9 + 0.2 * rng.unit());
    }
    stale = 0;
  }

  function* turn(looks: number, offer: OfferFill): Generator<number, void, void> {
    for (let left = looks; left > 0; ) {
      if (stale >= STALE) drawWorths();
      const complete = fillRows(tables, worth, UNCAPPED, buffers);
      const [, end, , work] = buffers.result;
      stale++;
      if (complete && end! < best) {
        best = end!;
        stale = 0;
        offer(best, () => filledRectangles(tables, buffers));
      }
      correct(own, worth, buffers, rng);
      const spent = Math.ceil(work! / STEPS_PER_LOOK) + tables.pieces;
      left -= spent;
      yield spent;
    }
  }

  return { turn };
}

/** Mean over the pieces' area of their least extent across, units. */
function meanAcross({ sizes, sizeArea, sizeCount, sizeLeastAcross, area }: SearchTables): number {
  let sum = 0;
  for (let size = 0; size < sizes; size++) sum += sizeArea[size]! * sizeCount[size]! * sizeLeastAcross[size]!;
  return area > 0 ? sum / area : 0;
}

function correct(
  own: Float64Array,
  worth: Float64Array,
  { result, outWay, outRow, rowWaste, rowArea }: RowFillBuffers,
  rng: Rng,
): void {
  for (let i = 0; i < result[0]!; i++) {
    const way = outWay[i]!;
    const row = outRow[i]!;
    const cost = own[way]! * (1 + rowWaste[row]! / rowArea[row]!);
    const keep = 1 + 3 * rng.unit();
    worth[way] = (worth[way]! * keep + cost) / (keep + 1);
  }
}

function filledRectangles(
  { waySize, wayIndex }: SearchTables,
  { result, outWay, outAlong, outAcross }: RowFillBuffers,
): PlacedRectangle[] {
  return Array.from({ length: result[0]! }, (_, i) => {
    const way = outWay[i]!;
    return { size: waySize[way]!, way: wayIndex[way]!, along: outAlong[i]!, across: outAcross[i]! };
  });
}

import { bestPattern, knapsackMemory } from "../../../bounds/barSimplex.kernel.ts";
import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import type { Rng } from "../../../search/rng.ts";
import type { LaidWay } from "../beam/rulerBeam.ts";
import { fillStacks, readStack, stackTable } from "./shelfStacks.kernel.ts";

/** Elementary steps of the knapsacks that cost as much as one evaluation of the beams. */
export const STEPS_PER_EVALUATION = 100;

/** A shelf: a length of cloth over the whole width, in columns of stacked pieces. */
export interface Shelf {
  readonly height: number;
  /** `along` counts from the shelf's near edge. */
  readonly laid: readonly LaidWay[];
  readonly area: number;
}

/** Makes shelves out of the pieces left. */
export interface ShelfDesk {
  /** Works out the best stacks of the pieces left up to a height; steps of work. */
  stack(left: Int32Array, worth: Float64Array, upTo: number): number;
  /** Worth of the best shelf of a height by the stacks worked out last, pieces in several columns counted once each. */
  worthOf(height: number, left: Int32Array): number;
  /** Steps that `worthOf` takes. */
  readonly steps: number;
  /** The shelf of a height, column by column; the stacks are worked out anew as pieces run out. Yields evaluations. */
  filled(height: number, counts: Int32Array, worth: Float64Array): Generator<number, Shelf, void>;
}

/**
 * A desk for shelves up to `highest`, up to `stacked` pieces a column (1 or Infinity). Of the columns of a pattern it lays
 * the widest before the others are worked out anew, or with `rng` any of them, so that equal worths give unlike shelves.
 */
export function shelfDesk(
  tables: SearchTables,
  highest: number,
  stacked: number,
  rng: Rng | null = null,
): ShelfDesk {
  const table = stackTable(tables, highest, stacked === 1);
  const { widths } = table;
  const knapsack = knapsackMemory(tables.width, widths.length);
  const values = new Float64Array(widths.length);
  const most = new Int32Array(widths.length);
  const columns = new Int32Array(widths.length);
  const stack = new Int32Array(tables.ways);

  /** Values of columns of a height, and how often each can be had. */
  const price = (height: number, left: Int32Array, room: number): void => {
    for (let w = 0; w < widths.length; w++) {
      values[w] = table.value[w * (highest + 1) + height]!;
      most[w] = 0;
      if (values[w] === 0 || widths[w]! > room) continue;
      // The same stack as in a narrower column.
      if (w > 0 && values[w] === table.value[(w - 1) * (highest + 1) + height]!) {
        values[w] = 0;
        continue;
      }
      readStack(tables, table, w, height, stack);
      let times = Math.floor(room / widths[w]!);
      for (let way = 0; way < tables.ways; way++) {
        const count = stack[way]!;
        if (count > 0) times = Math.min(times, Math.floor(left[tables.waySize[way]!]! / count));
      }
      most[w] = Math.max(1, times);
    }
  };

  /** The shelf of a height, column by column; the stacks are worked out anew as pieces run out. */
  function* filled(height: number, counts: Int32Array, worth: Float64Array): Generator<number, Shelf, void> {
    const left = counts.slice();
    const laid: LaidWay[] = [];
    let start = 0;
    let area = 0;
    let top = 0;
    for (;;) {
      const room = tables.width - start;
      const work = fillStacks(tables, left, worth, table, height);
      price(height, left, room);
      const value = bestPattern(widths, values, most, room, knapsack, columns);
      yield Math.ceil((work + room * widths.length) / STEPS_PER_EVALUATION);
      if (value <= 0) return { height: top, laid, area };
      const from = rng === null ? widths.length - 1 : rng.below(widths.length);
      for (let k = 0; k < widths.length; k++) {
        const w = (from - k + widths.length) % widths.length;
        if (columns[w] === 0) continue;
        readStack(tables, table, w, height, stack);
        for (let column = 0; column < columns[w]!; column++) {
          if (column > 0 && stack.some((count, way) => count > left[tables.waySize[way]!]!)) break;
          let along = 0;
          stack.forEach((count, way) => {
            for (let copy = 0; copy < count && left[tables.waySize[way]!]! > 0; copy++) {
              laid.push({ way, across: start, along });
              along += tables.wayAlong[way]!;
              area += tables.sizeArea[tables.waySize[way]!]!;
              left[tables.waySize[way]!]!--;
            }
          });
          top = Math.max(top, along);
          start += widths[w]!;
        }
        break;
      }
    }
  }

  return {
    stack: (left, worth, upTo) => fillStacks(tables, left, worth, table, upTo),
    worthOf: (height, left) => {
      price(height, left, tables.width);
      return bestPattern(widths, values, most, tables.width, knapsack, columns);
    },
    steps: tables.width * widths.length + tables.ways * widths.length,
    filled,
  };
}

import { bestPattern, knapsackMemory } from "../../../bounds/barSimplex.kernel.ts";
import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import type { Rng } from "../../../search/rng.ts";
import type { LaidWay } from "../beam/rulerBeam.ts";
import { fillStacks, readStack, stackTable } from "./shelfStacks.kernel.ts";

/** Elementary steps of the knapsacks that cost as much as one evaluation of the beams. */
const STEPS_PER_EVALUATION = 100;
/** Shelf heights tried for every shelf. */
const MOST_HEIGHTS = 40;
/** Knapsack sizes beyond which a shelf takes too long. */
const MOST_EXTENT = 1500;
const MOST_WAYS = 60;
/** A plan is given up when what is left cannot end within this factor of the best. */
const HOPELESS = 1.03;

/** A shelf: a length of cloth over the whole width, in columns of stacked pieces. */
interface Shelf {
  readonly height: number;
  /** `along` counts from the shelf's near edge. */
  readonly laid: readonly LaidWay[];
  readonly area: number;
}

/** Whether the knapsacks are small enough to be worth while. */
export function hasShelves(tables: SearchTables): boolean {
  return tables.ways <= MOST_WAYS && Math.max(tables.width, highestOf(tables)) <= MOST_EXTENT;
}

function highestOf(tables: SearchTables): number {
  return 2 * Math.max(...tables.wayAlong);
}

/**
 * Plans of three stages, one after another without end: shelves whose columns are stacks by knapsack over the
 * height, put side by side by knapsack over the width, the densest shelf first. After every plan the value of
 * pieces that lay on wasteful shelves goes up, so that they find a place earlier in the next (sequential value
 * correction: Belov, Scheithauer & Mukhacheva 2008, J. Oper. Res. Soc. 59:823–832; shelves after Gilmore & Gomory
 * 1965, Oper. Res. 13:94–120). Yields evaluations; hands over every complete plan shorter than `best()`.
 */
export function* shelfPlans(
  tables: SearchTables,
  best: () => number,
  offer: (end: number, plan: readonly LaidWay[]) => void,
  rng: Rng,
): Generator<number, void, void> {
  const filler = shelfFiller(tables, rng);
  const worth = tables.sizeArea.slice();
  for (let round = 0; ; round++) {
    const power = 1 + 0.06 * rng.unit();
    if (round % 40 === 39) worth.set(tables.sizeArea);
    const left = tables.sizeCount.slice();
    const shelves: Shelf[] = [];
    let areaLeft = tables.area;
    let end = 0;
    while (areaLeft > 0 && end + areaLeft / tables.width < best() * HOPELESS) {
      const shelf = yield* filler(left, worth);
      for (const { way } of shelf.laid) left[tables.waySize[way]!]!--;
      shelves.push(shelf);
      areaLeft -= shelf.area;
      end += shelf.height;
    }
    if (areaLeft <= 0 && end < best()) offer(end, joined(shelves));
    for (const { height, laid, area } of shelves) {
      const scarce = (height * tables.width) / area;
      for (const { way } of laid) {
        const size = tables.waySize[way]!;
        worth[size] = 0.7 * worth[size]! + 0.3 * scarce * tables.sizeArea[size]! ** power;
      }
    }
  }
}

function joined(shelves: readonly Shelf[]): LaidWay[] {
  let start = 0;
  return shelves.flatMap(({ height, laid }) => {
    const at = start;
    start += height;
    return laid.map((one) => ({ ...one, along: one.along + at }));
  });
}

/** Finds a good shelf for the pieces left, a few heights looked at closely. */
function shelfFiller(
  tables: SearchTables,
  rng: Rng,
): (left: Int32Array, worth: Float64Array) => Generator<number, Shelf, void> {
  const highest = highestOf(tables);
  const table = stackTable(tables, highest);
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
      readStack(tables, table, w, height, stack);
      let times = Math.floor(room / widths[w]!);
      stack.forEach((count, way) => {
        if (count > 0) times = Math.min(times, Math.floor(left[tables.waySize[way]!]! / count));
      });
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
      const work = fillStacks(tables, left, worth, table);
      price(height, left, room);
      const value = bestPattern(widths, values, most, room, knapsack, columns);
      yield Math.ceil((work + room * widths.length) / STEPS_PER_EVALUATION);
      if (value <= 0) return { height: top, laid, area };
      for (let w = widths.length - 1; w >= 0; w--) {
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

  return function* shelf(left, worth) {
    const scored: { height: number; density: number }[] = [];
    let work = fillStacks(tables, left, worth, table);
    for (const height of heightsOf(tables, left, rng)) {
      price(height, left, tables.width);
      const value = bestPattern(widths, values, most, tables.width, knapsack, columns);
      scored.push({ height, density: (value / height) * (1 + 0.04 * rng.unit()) });
      work += tables.width * widths.length + tables.ways * widths.length;
      if (work < 300_000) continue;
      yield Math.ceil(work / STEPS_PER_EVALUATION);
      work = 0;
    }
    yield Math.ceil(work / STEPS_PER_EVALUATION);
    scored.sort((a, b) => b.density - a.density || a.height - b.height);
    let best: Shelf | null = null;
    let densest = 0;
    for (const { height } of scored.slice(0, 3)) {
      const found = yield* filled(height, left, worth);
      const value = found.laid.reduce((sum, { way }) => sum + worth[tables.waySize[way]!]!, 0) / found.height;
      if (value <= densest) continue;
      densest = value;
      best = found;
    }
    return best!;
  };
}

/** Heights a shelf may have: those of pieces left, and sums of two. */
function heightsOf(tables: SearchTables, left: Int32Array, rng: Rng): number[] {
  const single = new Set<number>();
  for (let way = 0; way < tables.ways; way++) {
    if (left[tables.waySize[way]!]! > 0) single.add(tables.wayAlong[way]!);
  }
  const heights = new Set(single);
  for (const a of single) for (const b of single) heights.add(a + b);
  const list = [...heights].sort((a, b) => a - b);
  while (list.length > MOST_HEIGHTS) list.splice(rng.below(list.length), 1);
  return list;
}

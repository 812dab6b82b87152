import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { power, type Rng } from "../../../search/rng.ts";
import type { LaidWay } from "../beam/rulerBeam.ts";
import { type Shelf, STEPS_PER_EVALUATION, shelfDesk } from "./shelfDesk.ts";

/** Shelf heights tried for every shelf. */
const MOST_HEIGHTS = 40;
/** Knapsack sizes beyond which a shelf takes too long. */
export const MOST_EXTENT = 1500;
const MOST_WAYS = 60;
/** A plan is given up when what is left cannot end within this factor of the best. */
const HOPELESS = 1.03;

/** Whether the knapsacks are small enough to be worth while. */
export function hasShelves(tables: SearchTables): boolean {
  return tables.ways <= MOST_WAYS && Math.max(tables.width, highestOf(tables)) <= MOST_EXTENT;
}

function highestOf(tables: SearchTables): number {
  return 2 * Math.max(...tables.wayAlong);
}

/**
 * Plans of few stages, one after another until none can be short enough: shelves whose columns are stacks by knapsack over the height, up to
 * `stacked` pieces each (1 or Infinity), put side by side by knapsack over the width, the densest shelf first. After every plan the value of
 * pieces that lay on wasteful shelves goes up, so that they find a place earlier in the next (sequential value
 * correction: Belov, Scheithauer & Mukhacheva 2008, J. Oper. Res. Soc. 59:823–832; shelves after Gilmore & Gomory
 * 1965, Oper. Res. 13:94–120). Yields evaluations; hands over every complete plan shorter than `best()`.
 */
export function* shelfPlans(
  tables: SearchTables,
  stacked: number,
  best: () => number,
  offer: (end: number, plan: readonly LaidWay[]) => void,
  rng: Rng,
): Generator<number, void, void> {
  const filler = shelfFiller(tables, stacked, rng);
  const worth = tables.sizeArea.slice();
  for (let round = 0; ; round++) {
    const exponent = 1 + 0.06 * rng.unit();
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
    // Every later round would begin in the same way, and say nothing of it.
    if (shelves.length === 0) return;
    if (areaLeft <= 0 && end < best()) offer(end, joined(shelves));
    for (const { height, laid, area } of shelves) {
      const scarce = (height * tables.width) / area;
      for (const { way } of laid) {
        const size = tables.waySize[way]!;
        worth[size] = 0.7 * worth[size]! + 0.3 * scarce * power(tables.sizeArea[size]!, exponent);
      }
    }
  }
}

export function joined(shelves: readonly Shelf[]): LaidWay[] {
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
  stacked: number,
  rng: Rng,
): (left: Int32Array, worth: Float64Array) => Generator<number, Shelf, void> {
  const highest = highestOf(tables);
  const desk = shelfDesk(tables, highest, stacked);

  return function* shelf(left, worth) {
    const scored: { height: number; density: number }[] = [];
    let work = desk.stack(left, worth, highest);
    for (const height of heightsOf(tables, left, rng)) {
      const value = desk.worthOf(height, left);
      scored.push({ height, density: (value / height) * (1 + 0.04 * rng.unit()) });
      work += desk.steps;
      if (work < 300_000) continue;
      yield Math.ceil(work / STEPS_PER_EVALUATION);
      work = 0;
    }
    yield Math.ceil(work / STEPS_PER_EVALUATION);
    scored.sort((a, b) => b.density - a.density || a.height - b.height);
    let best: Shelf | null = null;
    let densest = 0;
    for (const { height } of scored.slice(0, 3)) {
      const found = yield* desk.filled(height, left, worth);
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

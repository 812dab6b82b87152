import type { PlacedRectangle } from "../../../problem/rectangles/rectangleJob.ts";
import { type SearchTables, transposedTables } from "../../../problem/rectangles/searchTables.ts";
import { power, type Rng } from "../../../search/rng.ts";
import { advancePath, beginPath, FOUND, LOOKS, MOST_LAID, type SheetPath, sheetPath } from "./sheetDepth.kernel.ts";

/** Pieces a sheet may take on the average for every branch to be worth looking at. */
const MOST_ON_SHEET = 40;
const MOST_EXTENT = 20_000;
const MOST_WAYS = 400;
/** Options of the first round; each has a quarter more. */
const FIRST_ROUND = 2_000_000;
const GROWTH = 1.25;
/** What may be given up in a round, as a share of what the best plan leaves; by turns. */
const ALLOWED = [0.4, 0.7, 1];

/** Whether a closed sheet takes so few pieces that depth-first search can see much of what there is. */
export function isShallow(tables: SearchTables, length: number): boolean {
  const onSheet = (tables.width * length * tables.pieces) / Math.max(1, tables.area);
  const small = Math.max(length, tables.width) <= MOST_EXTENT && tables.ways <= MOST_WAYS;
  return small && tables.blocked.length === 0 && onSheet <= MOST_ON_SHEET;
}

/**
 * Plans of a closed sheet by depth-first search with a limit on what is given up (see the kernel), by turns from both
 * sides of the sheet and with the larger pieces first in ever other orders; a round ends when its options are spent.
 * Ends when a round that may give up all that the best plan leaves has seen every branch from both sides. `most` is the
 * area of the best plan so far. Yields the options looked at.
 */
export function* deepPlans(
  tables: SearchTables,
  length: number,
  most: () => number,
  offer: (laid: number, rectangles: readonly PlacedRectangle[]) => void,
  rng: Rng,
  slice: number,
): Generator<number, void, void> {
  const sides = [
    { tables, length, path: sheetPath(tables, length), seen: false },
    turnedSide(transposedTables(tables, length), tables.width),
  ];
  for (let round = 0; sides.some(({ seen }) => !seen); round++) {
    const side = sides[round % 2]!;
    if (side.seen) continue;
    const share = ALLOWED[(round >> 1) % ALLOWED.length]!;
    const { path } = side;
    const order = someOrder(side.tables, rng, round < 2 ? 0 : 0.5);
    const sheet = tables.width * length;
    const limit = FIRST_ROUND * power(GROWTH, round);
    beginPath(side.tables, path);
    const allowed = share * (sheet - most());
    for (const start = path.tally[LOOKS]!; path.tally[LOOKS]! - start < limit; ) {
      const before = path.tally[LOOKS]!;
      path.tally[MOST_LAID] = Math.max(path.tally[MOST_LAID]!, most());
      const over = advancePath(side.tables, path, order, allowed, slice);
      if (path.tally[FOUND]! >= 0) {
        const rectangles = rectanglesOf(side.tables, path);
        offer(path.tally[MOST_LAID]!, round % 2 === 0 ? rectangles : rectangles.map(turned));
      }
      yield path.tally[LOOKS]! - before;
      if (!over) continue;
      if (share === 1) side.seen = true;
      break;
    }
  }
}

function turnedSide(tables: SearchTables, length: number) {
  return { tables, length, path: sheetPath(tables, length), seen: false };
}

/** Ways by area, largest first, each area taken up to `loose` larger or smaller. */
function someOrder(tables: SearchTables, rng: Rng, loose: number): Int32Array {
  const keys = Float64Array.from({ length: tables.ways }, (_, way) => {
    return tables.sizeArea[tables.waySize[way]!]! * (1 + loose * (rng.unit() - 0.5));
  });
  return Int32Array.from(keys, (_, way) => way).sort((a, b) => keys[b]! - keys[a]! || a - b);
}

function rectanglesOf(tables: SearchTables, { way, across, along, tally }: SheetPath): PlacedRectangle[] {
  const placed: PlacedRectangle[] = [];
  for (let step = 1; step <= tally[FOUND]!; step++) {
    const each = way[step]!;
    if (each < 0) continue;
    placed.push({
      size: tables.waySize[each]!,
      way: tables.wayIndex[each]!,
      along: along[step]!,
      across: across[step]!,
    });
  }
  return placed;
}

function turned(rectangle: PlacedRectangle): PlacedRectangle {
  return { ...rectangle, along: rectangle.across, across: rectangle.along };
}

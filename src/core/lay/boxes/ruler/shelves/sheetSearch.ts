import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { power, type Rng } from "../../../search/rng.ts";
import type { LaidWay } from "../beam/rulerBeam.ts";
import { type Shelf, STEPS_PER_EVALUATION, shelfDesk } from "./shelfDesk.ts";
import { joined, MOST_EXTENT } from "./shelfSearch.ts";

/** Ways beyond which the knapsacks take too long. */
const MOST_WAYS = 150;
/** Shelf heights tried for every shelf. */
const MOST_HEIGHTS = 60;
/** Plans after which the search may have slipped back, as a list of late areas. */
const LATE = 30;
/** Share of plans that are begun anew. */
const FRESH = 0.05;
/** How far the worth of a size may stray from its area in a rebuilding, as a share. */
const STRAY = 0.04;

/** Whether closed cloth of this length is small enough for the knapsacks. */
export function isSheet(tables: SearchTables, length: number): boolean {
  return tables.ways <= MOST_WAYS && Math.max(tables.width, length) <= MOST_EXTENT;
}

/**
 * Plans of few stages on closed cloth, columns of up to `stacked` pieces (1 or Infinity), that leave out ever less, until nothing is left out: a few shelves are taken
 * out of the last plan and that length is filled again. How it is parted into shelves is a knapsack over their heights,
 * each worth what the best shelf of that height would be; the first of them is laid, the rest is parted anew with the
 * pieces that remain (two-stage patterns: Gilmore & Gomory 1965, Oper. Res. 13:94–120). What a size is worth strays a
 * little each time; a plan is gone on from when it is no worse than one some thirty before (late acceptance: Burke &
 * Bykov 2017, Eur. J. Oper. Res. 258:70–78). Yields evaluations.
 */
export function* sheetPlans(
  tables: SearchTables,
  length: number,
  stacked: number,
  offer: (areaLeft: number, end: number, plan: () => readonly LaidWay[]) => void,
  rng: Rng,
): Generator<number, void, void> {
  const refilled = refiller(tables, length, stacked, rng);
  const worth = new Float64Array(tables.sizes);
  let shelves: readonly Shelf[] = [];
  const late = new Float64Array(LATE);
  let most = 0;
  for (let round = 0; most < tables.area; round++) {
    const kept = round === 0 || rng.unit() < FRESH ? [] : someKept(shelves, rng);
    const exponent = 1 + 0.05 * rng.unit();
    for (let size = 0; size < tables.sizes; size++)
      worth[size] = power(tables.sizeArea[size]!, exponent) * (1 + (round === 0 ? 0 : STRAY * (rng.unit() - 0.5)));
    const built = [...kept, ...(yield* refilled(kept, worth))];
    const area = areaOf(built);
    if (area > most) {
      most = area;
      const end = built.reduce((sum, { height }) => sum + height, 0);
      offer(tables.area - area, end, () => joined(built));
    }
    if (area >= late[round % LATE]! || area >= areaOf(shelves)) shelves = built;
    late[round % LATE] = areaOf(shelves);
  }
}

function areaOf(shelves: readonly Shelf[]): number {
  return shelves.reduce((sum, { area }) => sum + area, 0);
}

/** All shelves but one to three. */
function someKept(shelves: readonly Shelf[], rng: Rng): Shelf[] {
  const kept = [...shelves];
  for (let out = 1 + rng.below(Math.min(3, kept.length)); out > 0 && kept.length > 0; out--)
    kept.splice(rng.below(kept.length), 1);
  return kept;
}

/** Fills the length that the kept shelves leave with shelves of the pieces they leave. */
function refiller(
  tables: SearchTables,
  length: number,
  stacked: number,
  rng: Rng,
): (kept: readonly Shelf[], worth: Float64Array) => Generator<number, Shelf[], void> {
  const desk = shelfDesk(tables, length, stacked, rng);
  const value = new Float64Array(length + 1);
  const first = new Int32Array(length + 1);

  /** Heights of a part of the room; `first` says how it is best parted. */
  function* parting(room: number, left: Int32Array, worth: Float64Array): Generator<number, number, void> {
    let work = desk.stack(left, worth, room);
    value.fill(0, 0, room + 1);
    first.fill(0, 0, room + 1);
    const heights = heightsUpTo(tables, room, left, rng);
    const values: number[] = [];
    for (const height of heights) {
      values.push(desk.worthOf(height, left));
      work += desk.steps;
      if (work < 300_000) continue;
      yield Math.ceil(work / STEPS_PER_EVALUATION);
      work = 0;
    }
    for (let end = 1; end <= room; end++) {
      value[end] = value[end - 1]!;
      first[end] = 0;
      for (let i = 0; i < heights.length && heights[i]! <= end; i++) {
        const with_ = value[end - heights[i]!]! + values[i]!;
        if (with_ <= value[end]! + 1e-9) continue;
        value[end] = with_;
        first[end] = heights[i]!;
      }
    }
    yield Math.ceil((work + room * heights.length) / STEPS_PER_EVALUATION);
    const parts: number[] = [];
    for (let end = room; end > 0; ) {
      if (first[end] === 0) end--;
      else {
        parts.push(first[end]!);
        end -= first[end]!;
      }
    }
    return parts.length === 0 ? 0 : parts[rng.below(parts.length)]!;
  }

  return function* refilled(kept, worth) {
    const left = tables.sizeCount.slice();
    for (const { laid } of kept) for (const { way } of laid) left[tables.waySize[way]!]!--;
    const built: Shelf[] = [];
    for (let room = length - kept.reduce((sum, { height }) => sum + height, 0); room > 0; ) {
      const height = yield* parting(room, left, worth);
      if (height === 0) break;
      const shelf = yield* desk.filled(height, left, worth);
      if (shelf.laid.length === 0) break;
      for (const { way } of shelf.laid) left[tables.waySize[way]!]!--;
      built.push(shelf);
      room -= shelf.height;
    }
    return built;
  };
}

/** Heights a shelf may have: those of pieces left, some sums of them, what each of these leaves, and all the room. */
function heightsUpTo(tables: SearchTables, room: number, left: Int32Array, rng: Rng): number[] {
  const single: number[] = [];
  for (let way = 0; way < tables.ways; way++)
    if (left[tables.waySize[way]!]! > 0 && tables.wayAlong[way]! <= room) single.push(tables.wayAlong[way]!);
  if (single.length === 0) return [];
  const heights = new Set<number>([room]);
  for (let tries = 0; tries < 3 * MOST_HEIGHTS && heights.size < MOST_HEIGHTS; tries++) {
    let height = 0;
    for (let terms = 1 + rng.below(4); terms > 0; terms--) height += single[rng.below(single.length)]!;
    if (height > room) continue;
    heights.add(height);
    if (height < room) heights.add(room - height);
  }
  return [...heights].sort((a, b) => a - b);
}

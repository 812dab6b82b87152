import type { SearchTables } from "../problem/rectangles/searchTables.ts";
import { BREATH, type Breath, inOneGo } from "../search/breath.ts";
import { barFunction, PLAIN, ROUNDED_DOWN, STEPS_OF_K, WHOLE_OR_NOTHING } from "./barFunctions.kernel.ts";

/** A proven lower bound on the end of any plan, units, that rises while a search runs. */
export interface BoundHolder {
  value: number;
}

/** One dual-feasible function tabulated: its value for each way, and at the capacity. */
interface Tabulated {
  readonly values: Float64Array;
  readonly atCapacity: number;
}

/** Most parameters tried per family, so that jobs with hundreds of sizes stay within some milliseconds. */
const MOST_PARAMETERS = 60;

/**
 * Proven lower bound on the furthest end of any plan on an open region (units), at once: area, tallest piece,
 * stack of pieces wider than half, and dual-feasible functions across, along, and both. A trial length is ruled
 * out when the pieces, each in its best way no longer than the trial, need more than the trial's area under some
 * function; the bound is the least length not ruled out. Blocked boxes are left out of account, which is safe.
 */
export function quickBound(tables: SearchTables): number {
  return inOneGo(quickBoundSteps(tables));
}

/** The same, with a breath after each trial length. */
export function* quickBoundSteps(tables: SearchTables): Generator<Breath, number, unknown> {
  const across = tabulate(tables.wayAcross, tables.width, 100);
  let low = Math.max(Math.ceil(tables.area / Math.max(1, tables.width) - 1e-9), tallestLeast(tables));
  let step = 1;
  // Gallop up from the area bound, then bisect: the first length that is not ruled out.
  let high = low;
  while (isRuledOut(tables, across, high)) {
    yield BREATH;
    low = high + 1;
    high += step;
    step *= 2;
  }
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (isRuledOut(tables, across, middle)) low = middle + 1;
    else high = middle;
    yield BREATH;
  }
  return high;
}

function tallestLeast(tables: SearchTables): number {
  let tallest = 0;
  for (const along of tables.sizeLeastAlong) tallest = Math.max(tallest, along);
  return tallest;
}

/** Whether no plan ends at `length` or before. Monotone: a longer length allows more ways and more area. */
function isRuledOut(tables: SearchTables, across: readonly Tabulated[], length: number): boolean {
  const { sizes, sizeFirstWay, sizeSecondWay, sizeCount, wayAlong, width } = tables;
  const along = tabulate(wayAlong, length, 20);
  for (const f of across) if (exceeds(f, along[0]!)) return true;
  for (const g of along) if (exceeds(across[0]!, g)) return true;
  if (sizes <= 40)
    for (const f of across.slice(1, 16)) for (const g of along.slice(1, 16)) if (exceeds(f, g)) return true;
  return false;

  function exceeds(f: Tabulated, g: Tabulated): boolean {
    const capacity = f.atCapacity * g.atCapacity;
    if (!(capacity > 0) || width === 0) return false;
    let sum = 0;
    for (let size = 0; size < sizes; size++) {
      const first = sizeFirstWay[size]!;
      const second = sizeSecondWay[size]!;
      let least = wayAlong[first]! <= length ? f.values[first]! * g.values[first]! : Infinity;
      if (second >= 0 && wayAlong[second]! <= length) {
        least = Math.min(least, f.values[second]! * g.values[second]!);
      }
      sum += least * sizeCount[size]!;
    }
    return sum > capacity * (1 + 1e-12);
  }
}

/** The functions worth trying for a capacity: parameters are the extents that occur, and their complements. */
function tabulate(extents: Int32Array, capacity: number, rounded: number): Tabulated[] {
  const out: Tabulated[] = [];
  const add = (family: number, k: number): void => {
    const values = new Float64Array(extents.length);
    for (let i = 0; i < extents.length; i++) {
      values[i] = extents[i]! > capacity ? Infinity : barFunction(family, k, capacity, extents[i]!);
    }
    out.push({ values, atCapacity: barFunction(family, k, capacity, capacity) });
  };
  add(PLAIN, 0);
  const parameters = new Set<number>();
  for (const extent of extents) {
    for (const k of [extent, capacity - extent, extent + 1, capacity - extent + 1]) {
      if (k >= 1 && 2 * k <= capacity) parameters.add(k);
    }
  }
  const half = Math.floor(capacity / 2);
  const list = [...parameters].sort((a, b) => b - a);
  const stride = Math.max(1, Math.ceil(list.length / MOST_PARAMETERS));
  if (half >= 1) add(WHOLE_OR_NOTHING, half);
  for (let i = 0; i < list.length; i += stride) add(WHOLE_OR_NOTHING, list[i]!);
  for (let i = 0; i < list.length; i += stride) add(STEPS_OF_K, list[i]!);
  for (let k = 1; k <= rounded; k++) add(ROUNDED_DOWN, k);
  return out;
}

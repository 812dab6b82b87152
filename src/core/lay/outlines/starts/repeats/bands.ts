import type { Cluster, NoFit, RepeatVariant } from "./clusters.ts";
import { bestCycle, type Column, columnsOf, type Pattern, turnedColumn } from "./columns.ts";

/** Room above a single row in which its half turns may step up and down, as shares of its height. */
const STEPS = [0, 0.12, 0.25];
const BANDS_PER_COUNT = 2;
/** Different bands in one stack. */
const MOST_KINDS = 3;
const MOST_STACKS = 20_000;
/** Stacks weighed between two pauses. */
const STACKS_PER_TURN = 300;
/** What pieces left over by a stack are expected to reach. */
const REST_DENSITY = 0.74;

/** A pattern that runs along the roll as a band of its own height. */
export interface Band {
  readonly pattern: Pattern;
  readonly height: number;
  /** Area of each shape per unit of length. */
  readonly rates: ReadonlyMap<number, number>;
}

/** Bands stacked across the roll, lowest first. */
export type Stack = readonly Band[];

/** A pattern as a band of this height. */
export function bandOf(pattern: Pattern, height: number, variants: readonly RepeatVariant[]): Band {
  const rates = new Map<number, number>();
  const period = pattern.gapThere + pattern.gapBack;
  for (const column of [pattern.first, pattern.second])
    for (const { variant } of column.cluster.members) {
      const { shape, area } = variants[variant]!;
      rates.set(shape, (rates.get(shape) ?? 0) + (column.copies * area) / period);
    }
  return { pattern, height, rates };
}

/** Area of pieces ÷ area of the band, without ends. */
export function fullness(band: Band): number {
  let rate = 0;
  for (const own of band.rates.values()) rate += own;
  return rate / band.height;
}

/**
 * Bands of a cluster: one, two, … rows of it, each followed by itself or by its half turn, the fullest of each
 * number of rows. Cost: as `columnsOf`, and one cycle for each column and number of rows.
 */
export function* bandsOf(
  cluster: Cluster,
  width: number,
  variants: readonly RepeatVariant[],
  noFit: NoFit,
): Generator<void, Band[]> {
  const height = cluster.maxY - cluster.minY;
  const byCount = new Map<number, Band[]>();
  function* offer(column: Column, reach: number): Generator<void, void> {
    if (reach > width) return;
    for (const second of [column, turnedColumn(column, variants)]) {
      if (second === null) continue;
      const band = bandOf(yield* bestCycle(column, second, reach, 1, noFit), reach, variants);
      const bands = byCount.get(column.copies) ?? [];
      bands.push(band);
      bands.sort((a, b) => fullness(b) - fullness(a));
      byCount.set(column.copies, bands.slice(0, BANDS_PER_COUNT));
    }
    yield;
  }
  for (const step of STEPS) {
    const slack = Math.round(step * height);
    yield* offer({ cluster, copies: 1, stepX: 0, stepY: height, slack }, height + slack);
  }
  for (const column of yield* columnsOf(cluster, width, noFit)) {
    if (Math.abs(column.stepX) > (cluster.maxX - cluster.minX) / 2) continue;
    for (const copies of new Set([2, 3, column.copies]))
      if (copies > 1 && copies <= column.copies)
        yield* offer({ ...column, copies, slack: 0 }, height + (copies - 1) * column.stepY);
  }
  return [...byCount.values()].flat();
}

/** Length after which the first shape runs out, and what the rest then takes at a modest density. */
function promised(rates: Float64Array, width: number, areas: readonly number[]): number {
  let length = Infinity;
  for (let shape = 0; shape < rates.length; shape++)
    if (rates[shape]! > 0) length = Math.min(length, areas[shape]! / rates[shape]!);
  let rest = 0;
  for (let shape = 0; shape < rates.length; shape++) rest += Math.max(0, areas[shape]! - rates[shape]! * length);
  return length + rest / (REST_DENSITY * width);
}

/** Stacks of up to three kinds of bands that fill the roll's width, most promising first. `areas`: to lay, by shape. */
export function* stacksOf(
  bands: readonly Band[],
  width: number,
  areas: readonly number[],
  most: number,
): Generator<void, Stack[]> {
  const order = [...bands].sort((a, b) => fullness(b) - fullness(a)).slice(0, 40);
  const found: { stack: Stack; length: number }[] = [];
  const stack: Band[] = [];
  /** Area of each shape per unit of length in the lowest 0, 1, 2, … bands of the stack. */
  const rates = [new Float64Array(areas.length)];
  let tried = 0;
  const offer = (): void => {
    const length = promised(rates[stack.length]!, width, areas);
    let at = found.length;
    while (at > 0 && found[at - 1]!.length > length) at--;
    if (at === most) return;
    found.splice(at, 0, { stack: [...stack], length });
    if (found.length > most) found.pop();
  };
  const put = (band: Band): void => {
    const below = rates[stack.length]!;
    stack.push(band);
    rates[stack.length] ??= new Float64Array(areas.length);
    const now = rates[stack.length]!;
    now.set(below);
    for (const [shape, rate] of band.rates) now[shape]! += rate;
  };
  function* grow(from: number, kinds: number, room: number): Generator<void, void> {
    if (tried++ > MOST_STACKS) return;
    if (tried % STACKS_PER_TURN === 0) yield;
    if (stack.length > 0) offer();
    if (kinds === MOST_KINDS) return;
    for (let k = from; k < order.length; k++) {
      const band = order[k]!;
      const below = stack.length;
      for (let left = room - band.height; left >= 0; left -= band.height) {
        put(band);
        yield* grow(k + 1, kinds + 1, left);
      }
      stack.length = below;
    }
  }
  yield* grow(0, 0, width);
  return found.map((one) => one.stack);
}

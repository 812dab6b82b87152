import type { PlacedRectangle } from "../../../problem/rectangles/rectangleJob.ts";
import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { type Annealed, Annealing } from "../../../search/annealing.ts";
import { BREATH, type Breath } from "../../../search/breath.ts";
import type { Rng } from "../../../search/rng.ts";
import { type DecodeBuffers, decodeBuffers, decodeOrder, UNCAPPED } from "./skylineDecode.kernel.ts";

/** Where the pieces of the last decode lie. */
export function decodedRectangles(tables: SearchTables, buffers: DecodeBuffers): PlacedRectangle[] {
  const placed: PlacedRectangle[] = [];
  for (let i = 0; i < buffers.result[0]!; i++) {
    const way = buffers.outWay[i]!;
    placed.push({
      size: tables.waySize[way]!,
      way: tables.wayIndex[way]!,
      along: buffers.outAlong[i]!,
      across: buffers.outAcross[i]!,
    });
  }
  return placed;
}

/** The customary first orders: by area, extent across, extent along and perimeter, largest first. */
export function startOrders(tables: SearchTables): Int32Array[] {
  const { sizes, sizeCount, sizeArea, sizeFirstWay, wayAcross, wayAlong } = tables;
  const across = (size: number): number => wayAcross[sizeFirstWay[size]!]!;
  const along = (size: number): number => wayAlong[sizeFirstWay[size]!]!;
  const measures = [
    (size: number) => sizeArea[size]!,
    across,
    along,
    (size: number) => across(size) + along(size),
    (size: number) => Math.max(across(size), along(size)),
  ];
  return measures.map((measure) => {
    const sorted = Array.from({ length: sizes }, (_, size) => size).sort(
      (a, b) => measure(b) - measure(a) || a - b,
    );
    return Int32Array.from(sorted.flatMap((size) => new Array<number>(sizeCount[size]!).fill(size)));
  });
}

/** Local search over the order in which pieces are offered to the skyline, in annealing rounds. */
export interface OrderSearch {
  /** Begins a round for a cap on the length, to last `looks` entries looked at. A breath after each decode. */
  begin(cap: number, looks: number): Generator<Breath, void, void>;
  /**
   * Goes on for about `looks` entries. "found" as soon as everything fits (the buffers then hold the plan),
   * "over" when the round is spent, else "more".
   */
  advance(looks: number): Annealed;
  /** Entries looked at since the search was made. */
  spent(): number;
  readonly buffers: DecodeBuffers;
  /** The order that left out least at the last cap; writing to it seeds the next round. */
  readonly best: Int32Array;
  /** Area that `best` left out. */
  least(): number;
}

/**
 * Order search seeded with `order`. A round anneals from 0.1 mean piece areas down to nothing; the next starts, by
 * turns, where it ended and from the best order so far with a tenth of it shaken up (from the best itself is a rut).
 */
export function orderSearch(tables: SearchTables, order: Int32Array, rng: Rng): OrderSearch {
  const buffers = decodeBuffers(tables);
  const n = order.length;
  const current = order.slice();
  const best = order.slice();
  const trial = new Int32Array(n);
  const annealing = new Annealing(rng, tables.area / Math.max(1, n));
  let cap = UNCAPPED;
  let rounds = 0;

  const decode = (candidate: Int32Array, mostLeft = Infinity): number => {
    const areaLeft = decodeOrder(tables, candidate, cap, buffers, mostLeft);
    annealing.spend(buffers.result[2]! + n);
    return areaLeft;
  };

  const change = (): void => {
    trial.set(current);
    const i = rng.below(n);
    let j = rng.below(n);
    for (let tries = 0; tries < 8 && current[i] === current[j]; tries++) j = rng.below(n);
    if (rng.below(10) < 7) {
      trial[i] = current[j]!;
      trial[j] = current[i]!;
    } else {
      if (i < j) trial.copyWithin(i, i + 1, j + 1);
      else trial.copyWithin(j + 1, j, i);
      trial[j] = current[i]!;
    }
  };

  /** Swaps a tenth of the pieces of `current`. */
  const shake = (): void => {
    for (let swaps = Math.ceil(n / 10); swaps > 0; swaps--) {
      const i = rng.below(n);
      const j = rng.below(n);
      const held = current[i]!;
      current[i] = current[j]!;
      current[j] = held;
    }
  };

  function* begin(newCap: number, looks: number): Generator<Breath, void, void> {
    cap = newCap;
    annealing.begin(looks);
    annealing.least = decode(best);
    yield BREATH;
    const fromBest = rounds % 2 === 0;
    rounds++;
    if (fromBest || annealing.least === 0) current.set(best);
    annealing.value = annealing.least;
    if (rounds === 1 || annealing.least === 0) return;
    if (fromBest) shake();
    annealing.value = decode(current);
    if (annealing.value < annealing.least) {
      annealing.least = annealing.value;
      best.set(current);
    }
    yield BREATH;
  }

  const take = (isLeast: boolean): void => {
    current.set(trial);
    if (isLeast) best.set(trial);
  };
  const annealed = { change, decode: (most: number) => decode(trial, most), take };
  return {
    begin,
    advance: (looks) => annealing.advance(looks, annealed),
    spent: () => annealing.spent,
    buffers,
    best,
    least: () => annealing.least,
  };
}

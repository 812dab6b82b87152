import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { type Annealed, Annealing } from "../../../search/annealing.ts";
import type { Rng } from "../../../search/rng.ts";
import {
  decodeSplits,
  type NarrowRule,
  SPLIT_SMALLER,
  type SplitBuffers,
  splitBuffers,
} from "./splitDecode.kernel.ts";

/** Annealed search over the order of the pieces and over how the rest beside each is parted. */
export interface SplitSearch {
  /** Begins a round for a cap on the length, to last `looks` entries looked at. */
  begin(cap: number, looks: number): void;
  /** Goes on for about `looks` entries: "found" when everything fits (the buffers hold the plan), "over" when spent. */
  advance(looks: number): Annealed;
  /** Entries looked at since the search was made. */
  spent(): number;
  readonly buffers: SplitBuffers;
  /** Decodes the order that left out least at the last cap into the buffers; gives the area it leaves out. */
  decodeBest(cap: number): number;
  /** Area that the best order left out in this round. */
  least(): number;
}

/** A search seeded with `order`; every rest is parted the less wasteful way at first. */
export function splitSearch(tables: SearchTables, order: Int32Array, rng: Rng, narrow: NarrowRule): SplitSearch {
  const buffers = splitBuffers(tables);
  const n = order.length;
  const order0 = order.slice();
  const order1 = order.slice();
  const bestOrder = order.slice();
  const splits0 = new Uint8Array(n).fill(SPLIT_SMALLER);
  const splits1 = splits0.slice();
  const bestSplits = splits0.slice();
  const annealing = new Annealing(rng, tables.area / Math.max(1, n));
  let cap = 0;

  const decode = (candidate: Int32Array, splits: Uint8Array): number => {
    const areaLeft = decodeSplits(tables, candidate, splits, cap, buffers, narrow);
    annealing.spend(buffers.result[2]! + n);
    return areaLeft;
  };

  const change = (): void => {
    order1.set(order0);
    splits1.set(splits0);
    const i = rng.below(n);
    const kind = rng.below(10);
    if (kind < 2) {
      splits1[i] = (splits1[i]! + 1 + rng.below(2)) % 3;
      return;
    }
    let j = rng.below(n);
    for (let tries = 0; tries < 8 && order0[i] === order0[j]; tries++) j = rng.below(n);
    if (kind < 7) {
      order1[i] = order0[j]!;
      order1[j] = order0[i]!;
      splits1[i] = splits0[j]!;
      splits1[j] = splits0[i]!;
      return;
    }
    if (i < j) {
      order1.copyWithin(i, i + 1, j + 1);
      splits1.copyWithin(i, i + 1, j + 1);
    } else {
      order1.copyWithin(j + 1, j, i);
      splits1.copyWithin(j + 1, j, i);
    }
    order1[j] = order0[i]!;
    splits1[j] = splits0[i]!;
  };

  const begin = (newCap: number, looks: number): void => {
    cap = newCap;
    annealing.begin(looks);
    order0.set(bestOrder);
    splits0.set(bestSplits);
    annealing.value = decode(order0, splits0);
    annealing.least = annealing.value;
  };

  const take = (isLeast: boolean): void => {
    order0.set(order1);
    splits0.set(splits1);
    if (!isLeast) return;
    bestOrder.set(order1);
    bestSplits.set(splits1);
  };
  const annealed = { change, decode: () => decode(order1, splits1), take };
  return {
    begin,
    advance: (looks) => annealing.advance(looks, annealed),
    spent: () => annealing.spent,
    buffers,
    decodeBest: (at) => decodeSplits(tables, bestOrder, bestSplits, at, buffers, narrow),
    least: () => annealing.least,
  };
}

import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import type { Rng } from "../../../search/rng.ts";
import { decodeSplits, SPLIT_SMALLER, type SplitBuffers, splitBuffers } from "./splitDecode.kernel.ts";

/** Annealed search over the order of the pieces and over how the rest beside each is parted. */
export interface SplitSearch {
  /** Begins a round for a cap on the length, to last `looks` entries looked at. */
  begin(cap: number, looks: number): void;
  /** Goes on for about `looks` entries: "found" when everything fits (the buffers hold the plan), "over" when spent. */
  advance(looks: number): "found" | "more" | "over";
  /** Entries looked at since the search was made. */
  spent(): number;
  readonly buffers: SplitBuffers;
  /** Decodes the order that left out least at the last cap into the buffers; gives the area it leaves out. */
  decodeBest(cap: number): number;
  /** Area that the best order left out in this round. */
  least(): number;
}

/** How hot a round starts, in mean piece areas. */
const START_TEMPERATURE = 0.1;

/** A search seeded with `order`; every rest is parted the less wasteful way at first. */
export function splitSearch(tables: SearchTables, order: Int32Array, rng: Rng): SplitSearch {
  const buffers = splitBuffers(tables);
  const n = order.length;
  const meanArea = tables.area / Math.max(1, n);
  const order0 = order.slice();
  const order1 = order.slice();
  const bestOrder = order.slice();
  const splits0 = new Uint8Array(n).fill(SPLIT_SMALLER);
  const splits1 = splits0.slice();
  const bestSplits = splits0.slice();
  let cap = 0;
  let roundLooks = 0;
  let roundSpent = 0;
  let spent = 0;
  let value = Infinity;
  let least = Infinity;

  const decode = (candidate: Int32Array, splits: Uint8Array): number => {
    const areaLeft = decodeSplits(tables, candidate, splits, cap, buffers);
    const looked = buffers.result[2]! + n;
    spent += looked;
    roundSpent += looked;
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
    roundLooks = looks;
    roundSpent = 0;
    order0.set(bestOrder);
    splits0.set(bestSplits);
    value = decode(order0, splits0);
    least = value;
  };

  const advance = (looks: number): "found" | "more" | "over" => {
    const until = roundSpent + looks;
    while (value > 0) {
      if (roundSpent >= roundLooks) return "over";
      if (roundSpent >= until) return "more";
      change();
      const changed = decode(order1, splits1);
      const heat = START_TEMPERATURE * meanArea * (1 - roundSpent / roundLooks);
      if (changed > value && (heat <= 0 || rng.unit() >= Math.exp((value - changed) / heat))) continue;
      value = changed;
      order0.set(order1);
      splits0.set(splits1);
      if (value < least) {
        least = value;
        bestOrder.set(order1);
        bestSplits.set(splits1);
      }
    }
    return "found";
  };

  const decodeBest = (at: number): number => decodeSplits(tables, bestOrder, bestSplits, at, buffers);
  return { begin, advance, spent: () => spent, buffers, decodeBest, least: () => least };
}

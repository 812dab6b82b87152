import type { Rng } from "../rng.ts";
import { copySpots, emptySpots, type LayState, type Spots } from "./layState.ts";
import { Neighbours } from "./neighbours.ts";
import { SpotSearch } from "./spotSearch.ts";
import { SPOT_TUNING, type SpotTuning } from "./spotTuning.ts";

/** Weights of overlapping pairs grow by up to the second factor in each pass, those of others shrink back to 1. */
interface Pace {
  readonly leastGrowth: number;
  readonly mostGrowth: number;
  readonly decay: number;
}

export interface SeparationTuning {
  /** Fast weights throw stuck copies far away, slow ones let neighbours give way first. */
  readonly fast: Pace;
  readonly slow: Pace;
  readonly spot: SpotTuning;
}

export const SEPARATION_TUNING: SeparationTuning = {
  fast: { leastGrowth: 1.2, mostGrowth: 2, decay: 0.95 },
  slow: { leastGrowth: 1.1, mostGrowth: 1.5, decay: 0.97 },
  spot: SPOT_TUNING,
};

/** Guided local search that moves overlapping copies one by one until nothing overlaps (Voudouris & Tsang 1999, from memory). */
export class Separator {
  /** Least overlap seen in the last run, and where everything lay then. */
  least: number = Infinity;
  readonly leastSpots: Spots;
  /** Whether weights grow fast in the next run. */
  isFast = true;
  private readonly state: LayState;
  private readonly rng: Rng;
  private readonly tuning: SeparationTuning;
  private readonly search: SpotSearch;
  private readonly near: Neighbours;
  private readonly queue: Int32Array;

  constructor(state: LayState, rng: Rng, tuning: SeparationTuning) {
    this.state = state;
    this.rng = rng;
    this.tuning = tuning;
    this.search = new SpotSearch(state, rng, tuning.spot);
    this.near = new Neighbours(state.columns);
    this.queue = new Int32Array(state.count);
    this.leastSpots = emptySpots(state.count);
  }

  /** Works out every pair's overlap anew. */
  *measureAll(): Generator<void, void> {
    for (let i = 0; i < this.state.count; i++) {
      if (this.state.spots.variant[i]! < 0) this.clearRow(i);
      else this.measure(i);
      if (i % 16 === 15) yield;
    }
  }

  private clearRow(item: number): void {
    const { overlap, columns, count } = this.state;
    overlap.fill(0, item * columns, (item + 1) * columns);
    for (let j = 0; j < count; j++) overlap[j * columns + item] = 0;
  }

  /** Works out the overlaps of one copy. */
  measure(item: number): void {
    const { state, near } = this;
    const { overlap, columns, count, spots, gravity } = state;
    this.clearRow(item);
    near.fill(state, item, spots.variant[item]!, false);
    const x = spots.x[item]!;
    const y = spots.y[item]!;
    for (let k = 0; k < near.count; k++) {
      const depth = near.depthOf(state, k, x, y);
      if (depth === 0) continue;
      const j = near.column[k]!;
      const severity = depth * gravity[item]! * gravity[j]!;
      overlap[item * columns + j] = severity;
      if (j < count) overlap[j * columns + item] = severity;
    }
  }

  /** Sum of overlaps over all pairs. */
  total(): number {
    const { overlap, columns, count } = this.state;
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const row = i * columns;
      for (let j = 0; j < i; j++) sum += overlap[row + j]!;
      for (let j = count; j < columns; j++) sum += overlap[row + j]!;
    }
    return sum;
  }

  resetWeights(): void {
    this.state.weight.fill(1);
  }

  private overlapsAny(item: number): boolean {
    const { overlap, columns } = this.state;
    const end = (item + 1) * columns;
    for (let p = item * columns; p < end; p++) if (overlap[p]! > 0) return true;
    return false;
  }

  /** Fills the queue with overlapping copies in random order; returns how many. */
  private gather(): number {
    const { queue, rng, state } = this;
    let count = 0;
    for (let i = 0; i < state.count; i++) if (this.overlapsAny(i)) queue[count++] = i;
    for (let i = count - 1; i > 0; i--) {
      const j = rng.below(i + 1);
      const held = queue[i]!;
      queue[i] = queue[j]!;
      queue[j] = held;
    }
    return count;
  }

  private weightedRow(item: number): number {
    const { overlap, weight, columns } = this.state;
    let sum = 0;
    const end = (item + 1) * columns;
    for (let p = item * columns; p < end; p++) sum += overlap[p]! * weight[p]!;
    return sum;
  }

  private moveOne(item: number): void {
    const { state, search } = this;
    const now = this.weightedRow(item);
    search.run(item);
    if (search.value >= now * (1 - 1e-9)) return;
    state.spots.variant[item] = search.variant;
    state.spots.x[item] = search.x;
    state.spots.y[item] = search.y;
    this.measure(item);
  }

  private updateWeights(): void {
    const { overlap, weight, columns, count } = this.state;
    const { leastGrowth, mostGrowth, decay } = this.isFast ? this.tuning.fast : this.tuning.slow;
    let most = 0;
    for (let p = 0; p < overlap.length; p++) if (overlap[p]! > most) most = overlap[p]!;
    if (most === 0) return;
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < columns; j++) {
        if (j < count && j >= i) continue;
        const p = i * columns + j;
        const depth = overlap[p]!;
        const before = weight[p]!;
        if (depth === 0 && before === 1) continue;
        const after =
          depth > 0
            ? before * (leastGrowth + ((mostGrowth - leastGrowth) * depth) / most)
            : Math.max(1, before * decay);
        weight[p] = after;
        if (j < count) weight[j * columns + i] = after;
      }
    }
  }

  /**
   * Runs until nothing overlaps (true) or `patience` passes brought no new least total (false). Expects overlaps
   * measured; weights are kept from before.
   */
  *run(patience: number): Generator<void, boolean> {
    const { state } = this;
    this.least = this.total();
    copySpots(state.spots, this.leastSpots);
    let idle = 0;
    while (this.least > 0 && idle < patience) {
      const count = this.gather();
      for (let k = 0; k < count; k++) {
        if (this.overlapsAny(this.queue[k]!)) this.moveOne(this.queue[k]!);
        if (k % 16 === 15) yield;
      }
      const total = this.total();
      if (total < this.least) {
        idle = total < 0.999 * this.least ? 0 : idle + 1;
        this.least = total;
        copySpots(state.spots, this.leastSpots);
      } else idle++;
      if (total > 0) this.updateWeights();
      yield;
    }
    return this.least === 0;
  }
}

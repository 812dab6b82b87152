import type { Rng } from "../../search/rng.ts";
import { Nearby } from "../layout/nearby.ts";
import { copySpots, emptySpots, type Spots, type WorkLayout } from "../layout/workLayout.ts";
import { SpotSearch } from "./spotSearch.ts";
import { SPOT_TUNING, type SpotTuning } from "./spotTuning.ts";
import { StepScan } from "./stepScan.ts";

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

/**
 * An attempt of a job of many corners and more kinds than these does not end before so many evaluations for each copy
 * without progress.
 */
const FEW_KINDS = 12;
const WORK_PER_COPY = 400;

/** Guided local search that moves overlapping copies one by one until nothing overlaps (Voudouris & Tsang 1999, from memory). */
export class Separator {
  /** Least overlap seen in the last run, and where everything lay then. */
  least: number = Infinity;
  readonly leastSpots: Spots;
  /** Whether weights grow fast in the next run. */
  isFast = true;
  /** Whether copies look at every place on whole steps in the next run; only where there is a `scan`. */
  byScan = false;
  readonly scan: StepScan | null;
  private readonly state: WorkLayout;
  private readonly rng: Rng;
  private readonly tuning: SeparationTuning;
  private readonly search: SpotSearch;
  private readonly near: Nearby;
  private readonly queue: Int32Array;

  constructor(state: WorkLayout, rng: Rng, tuning: SeparationTuning) {
    this.state = state;
    this.rng = rng;
    this.tuning = tuning;
    this.search = new SpotSearch(state, rng, tuning.spot);
    this.scan = StepScan.of(state, rng);
    this.near = new Nearby(state);
    this.queue = new Int32Array(state.count);
    this.leastSpots = emptySpots(state.count);
  }

  /** Works out every pair's overlap anew, and where everything lies. */
  *measureAll(): Generator<undefined, void> {
    const { state } = this;
    let { built } = state.store;
    state.places.rebuild(state.maxX);
    for (let i = 0; i < state.count; i++) {
      if (state.spots.variant[i]! < 0) state.pairs.clearOverlaps(i);
      else this.measure(i);
      if (i % 16 === 15 || state.store.built > built) {
        built = state.store.built;
        yield;
      }
    }
  }

  /** Works out the overlaps of one copy. */
  private measure(item: number): void {
    const { state, near } = this;
    const { pairs, spots, gravity } = state;
    pairs.clearOverlaps(item);
    near.open(item, spots.variant[item]!);
    const x = spots.x[item]!;
    const y = spots.y[item]!;
    const met = near.gather(x, y, 0);
    for (let p = 0; p < met; p++) {
      const depth = near.depthOf(p, x, y);
      if (depth === 0) continue;
      const j = near.pick[p]!;
      pairs.setOverlap(item, j, depth * gravity[item]! * gravity[j]!);
    }
  }

  /** Sum of overlaps over all pairs. */
  total(): number {
    return this.state.pairs.total();
  }

  resetWeights(): void {
    this.state.pairs.resetWeights();
  }

  /** Fills the queue with overlapping copies in random order; returns how many. */
  private gather(): number {
    const { queue, rng, state } = this;
    let count = 0;
    for (let i = 0; i < state.count; i++) if (state.pairs.overlapsAny(i)) queue[count++] = i;
    for (let i = count - 1; i > 0; i--) {
      const j = rng.below(i + 1);
      const held = queue[i]!;
      queue[i] = queue[j]!;
      queue[j] = held;
    }
    return count;
  }

  private moveOne(item: number): void {
    const { state } = this;
    const search = this.byScan ? this.scan! : this.search;
    const now = state.pairs.weightedSum(item);
    search.run(item);
    if (search.value >= now * (1 - 1e-9)) return;
    state.spots.variant[item] = search.variant;
    state.spots.x[item] = search.x;
    state.spots.y[item] = search.y;
    state.places.move(item);
    this.measure(item);
  }

  /**
   * In a layout where nothing else overlaps: the given copies look for better spots one by one, `rounds` times, while
   * all others rest. Returns the overlap left. Weights are 1 after.
   */
  *settle(items: readonly number[], rounds: number): Generator<undefined, number> {
    const { state } = this;
    let { built } = state.store;
    this.resetWeights();
    state.places.rebuild(state.maxX);
    for (let i = 0; i < state.count; i++) state.pairs.clearOverlaps(i);
    for (const i of items) this.measure(i);
    for (let round = 0; round < rounds; round++) {
      for (const i of items) {
        if (!state.pairs.overlapsAny(i)) continue;
        this.moveOne(i);
        if (state.store.built > built) yield;
        built = state.store.built;
      }
    }
    return this.total();
  }

  private updateWeights(): void {
    const { leastGrowth, mostGrowth, decay } = this.isFast ? this.tuning.fast : this.tuning.slow;
    this.state.pairs.growWeights(leastGrowth, mostGrowth, decay);
  }

  /** No-fit polygons and tables built so far: each is work beside the evaluations. */
  private built(): number {
    return this.state.store.built + (this.scan?.built ?? 0);
  }

  /**
   * Runs until nothing overlaps (true) or `patience` passes brought no new least total (false). Expects overlaps
   * measured; weights are kept from before.
   */
  *run(patience: number): Generator<undefined, boolean> {
    const { state } = this;
    const hasMany = state.job.isDetailed && state.job.shapes.length > FEW_KINDS;
    const leastWork = hasMany ? WORK_PER_COPY * state.count : 0;
    this.least = this.total();
    copySpots(state.spots, this.leastSpots);
    let idle = 0;
    let worked = state.evaluations;
    let built = this.built();
    while (this.least > 0 && (idle < patience || state.evaluations - worked < leastWork)) {
      const count = this.gather();
      for (let k = 0; k < count; k++) {
        if (state.pairs.overlapsAny(this.queue[k]!)) this.moveOne(this.queue[k]!);
        if (k % 16 === 15 || this.built() > built) {
          built = this.built();
          yield;
        }
      }
      const total = this.total();
      if (total < this.least) {
        idle = total < 0.999 * this.least ? 0 : idle + 1;
        if (idle === 0) worked = state.evaluations;
        this.least = total;
        copySpots(state.spots, this.leastSpots);
      } else idle++;
      if (total > 0) this.updateWeights();
      yield;
    }
    return this.least === 0;
  }
}

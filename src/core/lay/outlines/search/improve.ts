import type { Pause } from "../../search/breath.ts";
import type { Rng } from "../../search/rng.ts";
import { CloseUp } from "../closeUp/closeUp.ts";
import { copySpots, emptySpots, type Spots, type WorkLayout } from "../layout/workLayout.ts";
import { Disruptor, type DisruptTuning } from "./disrupt.ts";
import type { Separator } from "./separate.ts";

export interface ImproveTuning extends DisruptTuning {
  /** Passes without progress before an attempt ends, while exploring and while compressing. */
  readonly explorePatience: number;
  readonly compressPatience: number;
  /** Largest, first and smallest shrink of an attempt while exploring, as shares of the length. */
  readonly mostShrink: number;
  readonly leastShrink: number;
  /** Share of attempts after a failure that go for the largest shrink again: some plans are a leap away, not a step. */
  readonly boldShare: number;
  /** Shrinks while compressing: from, to. */
  readonly firstSqueeze: number;
  readonly lastSqueeze: number;
  readonly squeezeDecay: number;
  /** In jobs of many corners a squeeze that succeeds is followed by one this much larger. */
  readonly squeezeGrowth: number;
  /** Failed attempts in a row before the best layout is compressed. */
  readonly failuresToCompress: number;
  readonly poolSize: number;
  /** What a drawing from the pool costs a state in rank, as a factor. */
  readonly fatigue: number;
  /** Power of the area by which overlaps count in heavy attempts; 0 in the others. */
  readonly gravityPower: number;
  /** Jobs whose areas vary by more than this (deviation ÷ mean) are tried heavy twice as often as not, others the other way round. */
  readonly mixedSizes: number;
}

export const IMPROVE_TUNING: ImproveTuning = {
  explorePatience: 60,
  compressPatience: 60,
  mostShrink: 0.01,
  leastShrink: 0.001,
  boldShare: 0.5,
  firstSqueeze: 0.0005,
  lastSqueeze: 0.00001,
  squeezeDecay: 0.75,
  squeezeGrowth: 1.7,
  failuresToCompress: 8,
  poolSize: 20,
  fatigue: 1.15,
  failuresToWorry: 40,
  freshStarts: 0.15,
  moreExchanges: 0.6,
  sections: 0.25,
  gravityPower: 0.25,
  mixedSizes: 0.55,
};

/** Where copies may look at every place on whole steps, they do in one attempt of so many. */
const SCANS_OF = 2;

/** A layout shorter by a smaller share than this is kept, but is no success: what failed before is still worth going on from. */
const LEAST_GAIN = 2e-5;

/** A layout this near to the proven least end has reached it, grid units. */
const PROVEN_UNITS = 2;

interface Failure {
  readonly spots: Spots;
  /** Its overlap, and that times a penalty for every time it was drawn. */
  readonly least: number;
  rank: number;
}

/**
 * Shortens a complete layout, until it is proven shortest: explore (shrink, separate, disrupt on failure), and compress each new best
 * by small squeezes once exploring stalls. Yields often; `best` holds the shortest layout without overlap so far.
 */
export class Improver {
  readonly best: Spots;
  private readonly state: WorkLayout;
  private readonly separator: Separator;
  private readonly rng: Rng;
  private readonly tuning: ImproveTuning;
  private pool: Failure[] = [];
  private offered: Spots | null = null;
  private isCompressed = false;
  private readonly disruptor: Disruptor;
  /** Which of the six manners: heavy or not, fast or slow. */
  private manner = 0;
  private readonly isMixed: boolean;
  private readonly leastEnd: number;
  private readonly closeUp: CloseUp;

  constructor(state: WorkLayout, separator: Separator, rng: Rng, tuning: ImproveTuning, leastEnd: number) {
    this.state = state;
    this.separator = separator;
    this.rng = rng;
    this.tuning = tuning;
    this.best = emptySpots(state.count);
    copySpots(state.spots, this.best);
    this.leastEnd = leastEnd;
    this.closeUp = new CloseUp(state, rng);
    this.disruptor = new Disruptor(state, rng, tuning);
    this.isMixed = state.areaSpread() > tuning.mixedSizes;
  }

  /** A layout found elsewhere; taken up at the next attempt if it is shorter. */
  offer(spots: Spots): void {
    if (spots.maxX < this.best.maxX) this.offered = spots;
  }

  private length(): number {
    return this.best.maxX - this.state.job.window.minX;
  }

  /** End of the window for an attempt `step` shorter than the best; never less than the proven least. */
  private target(step: number): number {
    return Math.max(this.leastEnd, this.best.maxX - step * this.length());
  }

  /** Whether the best layout is as short as any can be. */
  private isShortest(): boolean {
    return this.best.maxX <= this.leastEnd + PROVEN_UNITS;
  }

  /**
   * Takes up what was found elsewhere, if it is better. In jobs of many corners that layout is closed up by outlines in
   * detail, nearer than the search's own may lie: it is first eased to what the search can go on from.
   */
  private *takeOffer(): Generator<Pause, boolean> {
    const { offered } = this;
    this.offered = null;
    if (offered === null || offered.maxX >= this.best.maxX) return false;
    if (this.state.job.isDetailed) {
      copySpots(offered, this.state.spots);
      if (!(yield* this.close(true))) return false;
    } else copySpots(offered, this.best);
    this.pool = [];
    this.isCompressed = true;
    return true;
  }

  private keepBest(): void {
    const { state } = this;
    copySpots(state.spots, this.best);
    this.best.maxX = Math.min(state.end(), state.maxX);
    this.pool = [];
  }

  /** Sets the window's end; the difference is cut out (or put in) at a random place, moving what lies beyond. */
  private shrinkTo(maxX: number): void {
    const { state, rng } = this;
    const { spots, job } = state;
    const from = spots.maxX;
    const cut = job.window.minX + rng.unit() * (from - job.window.minX);
    const shift = from - maxX;
    state.maxX = maxX;
    spots.maxX = maxX;
    for (let i = 0; i < state.count; i++) {
      const variant = spots.variant[i]!;
      if (variant < 0) continue;
      const x = spots.x[i]!;
      state.placeWithin(i, variant, x > cut ? x - shift : x, spots.y[i]!);
    }
  }

  private remember(): void {
    const { pool, separator } = this;
    if (pool.some((known) => Math.abs(known.least - separator.least) <= 1e-6 * known.least)) return;
    const spots = emptySpots(this.state.count);
    copySpots(separator.leastSpots, spots);
    pool.push({ spots, least: separator.least, rank: separator.least });
    pool.sort((a, b) => a.rank - b.rank);
    if (pool.length > this.tuning.poolSize) pool.pop();
  }

  /** A remembered failure, low overlap likelier (half-normal on rank); each drawing makes it less likely. */
  private recall(): Spots {
    const { pool, rng } = this;
    const normal = Math.abs(Math.sqrt(-2 * Math.log(1 - rng.unit())) * Math.cos(2 * Math.PI * rng.unit()));
    const rank = Math.min(pool.length - 1, Math.floor((normal * pool.length) / 3));
    const drawn = pool[rank]!;
    drawn.rank *= this.tuning.fatigue;
    pool.sort((a, b) => a.rank - b.rank);
    return drawn.spots;
  }

  /** Whether the next attempt is one by whole steps, and takes the layout at hand to them if so. */
  private toSteps(): boolean {
    const { scan } = this.separator;
    if (scan === null || this.manner % SCANS_OF !== 1) return false;
    const end = scan.endAtMost(this.state.maxX);
    if (end < this.leastEnd) return false;
    this.state.maxX = end;
    this.state.spots.maxX = end;
    scan.align();
    return true;
  }

  /** One attempt: the state holds a start in the window set; true when it ends without overlap. */
  private *attempt(patience: number, mayScan: boolean): Generator<Pause, boolean> {
    this.separator.byScan = mayScan && this.toSteps();
    const manner = this.separator.scan === null ? this.manner : Math.floor(this.manner / SCANS_OF);
    const isUsual = manner % 3 < 2;
    this.separator.isFast = manner % 2 === 0;
    this.state.setGravity(isUsual === this.isMixed ? this.tuning.gravityPower : 0);
    this.state.store.trim();
    this.separator.resetWeights();
    yield* this.separator.measureAll();
    const done = yield* this.separator.run(patience);
    if (done) this.keepBest();
    const closed = yield* this.close(done);
    if (!done && !closed) this.manner++; // success stays with a manner, failure moves on
    return done || closed;
  }

  /** Closes up the end of an attempt, or what overlapped least in it; true when that gave a new best layout. */
  private *close(done: boolean): Generator<Pause, boolean> {
    const { state, separator } = this;
    if (!done) copySpots(separator.leastSpots, state.spots);
    if (!(yield* this.closeUp.run(this.leastEnd))) return false;
    const end = state.end();
    if (end >= this.best.maxX) return false;
    state.maxX = Math.max(end, state.leastEnd());
    yield* separator.measureAll();
    if (separator.total() > 0) return false;
    state.spots.maxX = end;
    const gain = this.best.maxX - end;
    if (gain < LEAST_GAIN * this.length()) {
      copySpots(state.spots, this.best);
      return false;
    }
    this.keepBest();
    return true;
  }

  private *explore(): Generator<Pause, void> {
    const { state, tuning, rng } = this;
    let step = tuning.mostShrink;
    let failures = 0;
    copySpots(this.best, state.spots);
    this.shrinkTo(this.target(step));
    while ((failures < tuning.failuresToCompress || this.isCompressed) && !this.isShortest()) {
      const done = yield* this.attempt(tuning.explorePatience, true);
      const told = yield* this.takeOffer();
      if (done || told) {
        if (done && !told) this.isCompressed = false;
        failures = 0;
        if (done) step = Math.min(tuning.mostShrink, step * 1.3);
        copySpots(this.best, state.spots);
        this.shrinkTo(this.target(step));
        continue;
      }
      failures++;
      this.remember();
      step = Math.max(tuning.leastShrink, step * 0.7);
      copySpots(this.recall(), state.spots);
      this.shrinkTo(this.target(rng.unit() < tuning.boldShare ? tuning.mostShrink : step));
      this.disruptor.run(failures);
    }
  }

  private *compress(): Generator<Pause, void> {
    const { state, tuning } = this;
    let step = tuning.firstSqueeze;
    while (step > tuning.lastSqueeze && !this.isShortest()) {
      copySpots(this.best, state.spots);
      this.shrinkTo(this.target(step));
      const done = yield* this.attempt(tuning.compressPatience, false);
      yield* this.takeOffer();
      if (!done) step *= tuning.squeezeDecay;
      else if (state.job.isDetailed) step = Math.min(tuning.mostShrink, step * tuning.squeezeGrowth);
    }
    this.isCompressed = true;
  }

  *run(): Generator<Pause, void> {
    while (!this.isShortest()) {
      yield* this.explore();
      yield* this.compress();
    }
  }
}

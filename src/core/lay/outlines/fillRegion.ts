import type { Pause } from "../breath.ts";
import type { Rng } from "../rng.ts";
import { CloseUp } from "./closeUp.ts";
import { copySpots, emptySpots, type LayState, type Spots } from "./layState.ts";
import type { Separator } from "./separate.ts";

export interface FillTuning {
  /** Passes without progress before an attempt ends. */
  readonly patience: number;
  /** Largest, first and smallest gain in laid area of an attempt, as shares of the area laid. */
  readonly mostGain: number;
  readonly leastGain: number;
  /** Copies exchanged at most for one attempt, and draws of such exchanges from which the best fitting is taken. */
  readonly mostOut: number;
  readonly draws: number;
  /** Exchanges tried on for an attempt, of which the least overlapping is pursued, and moves of each copy put in. */
  readonly triedOn: number;
  readonly settlings: number;
  /** Power of the area by which overlaps count in every other run of attempts. */
  readonly gravityPower: number;
}

export const FILL_TUNING: FillTuning = {
  patience: 4,
  mostGain: 0.03,
  leastGain: 0.001,
  mostOut: 4,
  draws: 40,
  triedOn: 6,
  settlings: 2,
  gravityPower: 0.25,
};

/**
 * Lays as much area as it can in a closed region that cannot take everything at first sight. An attempt changes the
 * choice of copies in one place, so that a little more is laid than in the best layout, and lets guided local search
 * make room; many short attempts reach further than few long ones. Ends when every copy is laid.
 */
export class RegionFiller {
  readonly best: Spots;
  private readonly state: LayState;
  private readonly separator: Separator;
  private readonly rng: Rng;
  private readonly tuning: FillTuning;
  private readonly areas: Float64Array;
  private readonly usable: readonly number[];
  private bestArea: number;
  private gain: number;
  private gravityTurn = 0;
  private readonly closeUp: CloseUp;
  private readonly chosen: Spots;
  /** Where the choice was changed last. */
  private centreX = 0;
  private centreY = 0;

  constructor(state: LayState, separator: Separator, rng: Rng, tuning: FillTuning) {
    this.state = state;
    this.separator = separator;
    this.rng = rng;
    this.tuning = tuning;
    this.gain = tuning.mostGain;
    this.closeUp = new CloseUp(state, rng);
    this.areas = Float64Array.from(state.job.items, ({ shape }) => state.job.shapes[shape]!.area);
    this.usable = state.job.items.flatMap(({ shape }, i) => (state.job.variantsOf[shape]!.length > 0 ? [i] : []));
    this.best = emptySpots(state.count);
    this.chosen = emptySpots(state.count);
    copySpots(state.spots, this.best);
    this.bestArea = state.laidArea(this.best);
  }

  /** A layout found elsewhere; the next attempt starts from it if more is laid in it. */
  offer(spots: Spots): void {
    const area = this.state.laidArea(spots);
    if (area <= this.bestArea) return;
    copySpots(spots, this.best);
    this.bestArea = area;
  }

  /** Drops a copy into the window: within `reach` of a point, or anywhere for Infinity. */
  private putIn(item: number, x: number, y: number, reach: number): void {
    const { state, rng } = this;
    const variants = state.job.variantsOf[state.job.items[item]!.shape]!;
    const variant = variants[rng.below(variants.length)]!;
    const somewhere = (low: number, high: number, at: number): number => {
      const from = Math.max(low, at - reach);
      return from + rng.unit() * Math.max(0, Math.min(high, at + reach) - from);
    };
    state.placeWithin(
      item,
      variant,
      somewhere(state.lowX(variant), state.highX(variant), x),
      somewhere(state.lowY(variant), state.highY(variant), y),
    );
  }

  /** The laid copies nearest to copy `item`, itself first. */
  private nearest(item: number, laid: readonly number[], count: number): number[] {
    const { spots } = this.state;
    const far = (i: number): number => Math.hypot(spots.x[i]! - spots.x[item]!, spots.y[i]! - spots.y[item]!);
    return [...laid].sort((a, b) => far(a) - far(b) || a - b).slice(0, count);
  }

  /**
   * Changes the choice of copies in one place so that the laid area lies above the best by the gain wanted, or as near
   * to it as some draws find: a few neighbours out, some of them and of the missing ones in. Something must be
   * missing. Returns what was put in.
   */
  private rechoose(): readonly number[] {
    const { state, rng, tuning, areas, bestArea } = this;
    const { spots } = state;
    const missing = this.usable.filter((i) => spots.variant[i]! < 0);
    const laid = this.usable.filter((i) => spots.variant[i]! >= 0);
    const centre = laid[rng.below(laid.length)] ?? -1;
    const out = centre < 0 ? [] : this.nearest(centre, laid, rng.below(tuning.mostOut + 1));
    const [x, y] = centre < 0 ? [0, 0] : [spots.x[centre]!, spots.y[centre]!];
    this.centreX = x;
    this.centreY = y;
    let room = state.laidArea(spots);
    let gone = 0;
    for (const i of out) gone += areas[i]!;
    room -= gone;
    const wanted = bestArea * (1 + this.gain);
    const offers = [...missing, ...out];
    let fit = Infinity;
    let into: number[] = [];
    for (let k = 0; k < tuning.draws; k++) {
      const drawn = this.drawn(offers, Math.max(1, out.length - 1 + rng.below(3)));
      let area = room;
      for (const i of drawn) area += areas[i]!;
      const off = Math.abs(area - wanted);
      if (area <= bestArea * (1 + 1e-9) || off >= fit) continue;
      fit = off;
      into = drawn;
    }
    if (into.length === 0) into = [...out, missing[rng.below(missing.length)]!];
    for (const i of out) spots.variant[i] = -1;
    const reach = out.length === 0 ? Infinity : 0.5 * Math.sqrt(gone) + 1;
    for (const i of into) this.putIn(i, x, y, reach);
    return into;
  }

  /**
   * Tries some changes of the best layout on: what is put in looks for its spot while all else rests. Leaves the
   * change that overlaps least. Most changes are bound to fail, and this tells at a tenth of an attempt's cost.
   */
  private *tryOn(): Generator<Pause, void> {
    const { state, separator, tuning, chosen } = this;
    let least = Infinity;
    let [x, y] = [0, 0];
    state.store.trim();
    for (let k = 0; k < tuning.triedOn && least > 0; k++) {
      // The host may meanwhile have offered a layout in which nothing is missing.
      if (state.missing(this.best).length === 0) break;
      copySpots(this.best, state.spots);
      const overlap = yield* separator.settle(this.rechoose(), tuning.settlings);
      // Counted even when nothing overlaps at once, so that every budget ends.
      state.evaluations++;
      yield;
      if (overlap >= least) continue;
      least = overlap;
      copySpots(state.spots, chosen);
      [x, y] = [this.centreX, this.centreY];
    }
    copySpots(chosen, state.spots);
    this.centreX = x;
    this.centreY = y;
  }

  /** Up to `count` different ones of a list. */
  private drawn(list: readonly number[], count: number): number[] {
    const out = new Set<number>();
    for (let k = 0; k < count && k < list.length; k++) out.add(list[this.rng.below(list.length)]!);
    return [...out];
  }

  /**
   * Changes the choice and separates what overlaps; copies that overlap little at the end are moved all at once, away
   * from the change.
   */
  private *attempt(): Generator<Pause, boolean> {
    const { state, separator, tuning } = this;
    state.setGravity(this.gravityTurn % 2 === 0 ? tuning.gravityPower : 0);
    yield* this.tryOn();
    separator.resetWeights();
    yield* separator.measureAll();
    if (yield* separator.run(tuning.patience)) return true;
    copySpots(separator.leastSpots, state.spots);
    if (!(yield* this.closeUp.clear(this.centreX, this.centreY))) return false;
    yield* separator.measureAll();
    return separator.total() === 0;
  }

  *run(): Generator<Pause, void> {
    const { state, tuning } = this;
    while (state.missing(this.best).length > 0) {
      // A layout that fails its check is put back by the host.
      this.bestArea = state.laidArea(this.best);
      if (!(yield* this.attempt())) {
        this.gravityTurn++; // success stays with a way of weighing, failure moves on
        this.gain = Math.max(tuning.leastGain, this.gain * 0.7);
        continue;
      }
      const area = state.laidArea(state.spots);
      if (area <= this.bestArea) continue;
      copySpots(state.spots, this.best);
      this.best.maxX = state.end();
      this.bestArea = area;
      this.gain = Math.min(tuning.mostGain, this.gain * 1.3);
    }
  }
}

import type { Pause } from "../../search/breath.ts";
import type { Rng } from "../../search/rng.ts";
import { CloseUp } from "../closeUp/closeUp.ts";
import { copySpots, emptySpots, type Spots, type WorkLayout } from "../layout/workLayout.ts";
import type { Separator } from "../search/separate.ts";

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
  /** Share of attempts that step aside, and how much less than in the best layout may then be laid, as a share of it. */
  readonly asideShare: number;
  readonly slack: number;
  /** Share of these in which two laid copies change places, and how far from there they may be put, as a share of their size. */
  readonly exchanges: number;
  readonly exchangeReach: number;
  /** Power of the area by which overlaps count in every other run of attempts. */
  readonly gravityPower: number;
}

/** Sums of the same areas in another order differ by less than this share. */
const LEAST_MORE = 1e-9;

/** The area an attempt is to lay: at least, and as near as it gets to. */
interface Aim {
  readonly isAside: boolean;
  readonly least: number;
  readonly wanted: number;
}

export const FILL_TUNING: FillTuning = {
  patience: 4,
  mostGain: 0.03,
  leastGain: 0.001,
  mostOut: 4,
  draws: 40,
  triedOn: 6,
  settlings: 2,
  asideShare: 0.6,
  slack: 0.006,
  exchanges: 0.5,
  exchangeReach: 0.3,
  gravityPower: 0.25,
};

/**
 * Lays as much area as it can in a closed region that cannot take everything at first sight. An attempt changes the
 * choice of copies in one place, so that a little more is laid, and lets guided local search make room; many short
 * attempts reach further than few long ones. Others step aside: they lay as much as before or little less, which
 * mostly succeeds, and from there more may fit. Ends when every copy is laid.
 */
export class RegionFiller {
  readonly best: Spots;
  private readonly state: WorkLayout;
  private readonly separator: Separator;
  private readonly rng: Rng;
  private readonly tuning: FillTuning;
  private readonly areas: Float64Array;
  private readonly usable: readonly number[];
  private bestArea: number;
  /** The layout that attempts start from, never much below the best, and the area laid in it. */
  private readonly here: Spots;
  private hereArea: number;
  private gain: number;
  private gravityTurn = 0;
  private readonly closeUp: CloseUp;
  private readonly chosen: Spots;
  /** Where the choice was changed last. */
  private centreX = 0;
  private centreY = 0;

  constructor(state: WorkLayout, separator: Separator, rng: Rng, tuning: FillTuning) {
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
    this.here = emptySpots(state.count);
    copySpots(state.spots, this.best);
    copySpots(state.spots, this.here);
    this.bestArea = state.laidArea(this.best);
    this.hereArea = this.bestArea;
  }

  /** A layout found elsewhere; the next attempt starts from it if more is laid in it. */
  offer(spots: Spots): void {
    const { state, best } = this;
    if (state.laidArea(spots) > state.laidArea(best) * (1 + LEAST_MORE)) copySpots(spots, best);
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
   * Changes the choice of copies in one place so that the laid area comes as near to what is wanted as some draws find:
   * a few neighbours out, some of them and of the missing ones in. Something must be missing. Returns what was put in.
   */
  private rechoose(aim: Aim): readonly number[] {
    const { state, rng, tuning, areas } = this;
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
    const offers = [...missing, ...out];
    let fit = Infinity;
    let into: number[] = [];
    for (let k = 0; k < tuning.draws; k++) {
      const drawn = this.drawn(offers, Math.max(1, out.length - 1 + rng.below(3)));
      let area = room;
      for (const i of drawn) area += areas[i]!;
      const off = Math.abs(area - aim.wanted);
      if (area < aim.least || off >= fit) continue;
      fit = off;
      into = drawn;
    }
    if (into.length === 0) into = [...out, missing[rng.below(missing.length)]!];
    for (const i of out) spots.variant[i] = -1;
    const reach = out.length === 0 ? Infinity : 0.5 * Math.sqrt(gone) + 1;
    for (const i of into) this.putIn(i, x, y, reach);
    return into;
  }

  /** Two laid copies of different shape change places, wherever these are; null when two draws do not bring such. */
  private exchange(): readonly number[] | null {
    const { state, rng, areas, tuning } = this;
    const { spots, job } = state;
    const laid = this.usable.filter((i) => spots.variant[i]! >= 0);
    const a = laid[rng.below(laid.length)] ?? -1;
    const b = laid[rng.below(laid.length)] ?? -1;
    if (a < 0 || job.items[a]!.shape === job.items[b]!.shape) return null;
    const [ax, ay, bx, by] = [spots.x[a]!, spots.y[a]!, spots.x[b]!, spots.y[b]!];
    const reach = tuning.exchangeReach * Math.sqrt(Math.max(areas[a]!, areas[b]!));
    this.putIn(a, bx, by, reach);
    this.putIn(b, ax, ay, reach);
    this.centreX = ax;
    this.centreY = ay;
    return [a, b];
  }

  /** Changes the layout at hand for an attempt; returns what was put in. */
  private change(aim: Aim): readonly number[] {
    const exchanged = aim.isAside && this.rng.unit() < this.tuning.exchanges ? this.exchange() : null;
    return exchanged ?? this.rechoose(aim);
  }

  /**
   * Tries some changes of the layout at hand on: what is put in looks for its spot while all else rests. Leaves the
   * change that overlaps least. Most changes are bound to fail, and this tells at a tenth of an attempt's cost.
   */
  private *tryOn(aim: Aim): Generator<Pause, void> {
    const { state, separator, tuning, chosen } = this;
    let least = Infinity;
    let [x, y] = [0, 0];
    state.store.trim();
    for (let k = 0; k < tuning.triedOn && least > 0; k++) {
      copySpots(this.here, state.spots);
      const overlap = yield* separator.settle(this.change(aim), tuning.settlings);
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
  private *attempt(aim: Aim): Generator<Pause, boolean> {
    const { state, separator, tuning } = this;
    state.setGravity(this.gravityTurn % 2 === 0 ? tuning.gravityPower : 0);
    yield* this.tryOn(aim);
    separator.resetWeights();
    yield* separator.measureAll();
    if (yield* separator.run(tuning.patience)) return true;
    copySpots(separator.leastSpots, state.spots);
    if (!(yield* this.closeUp.clear(this.centreX, this.centreY))) return false;
    yield* separator.measureAll();
    return separator.total() === 0;
  }

  /** Goes on from the best layout when the host has changed it: told a better one, or put the last good one back. */
  private heedHost(): void {
    const area = this.state.laidArea(this.best);
    if (area === this.bestArea) return;
    this.bestArea = area;
    copySpots(this.best, this.here);
    this.hereArea = area;
  }

  /** What the next attempt is to lay. */
  private aim(isAside: boolean): Aim {
    const { hereArea, bestArea, gain, tuning } = this;
    if (!isAside) return { isAside, least: hereArea * (1 + LEAST_MORE), wanted: hereArea * (1 + gain) };
    const least = bestArea * (1 - tuning.slack);
    return { isAside, least, wanted: least + this.rng.unit() * (hereArea - least) };
  }

  *run(): Generator<Pause, void> {
    const { state, tuning, rng } = this;
    while (state.missing(this.best).length > 0) {
      this.heedHost();
      const isAside = rng.unit() < tuning.asideShare;
      const done = yield* this.attempt(this.aim(isAside));
      if (!done) this.gravityTurn++; // success stays with a way of weighing, failure moves on
      if (!isAside)
        this.gain = done ? Math.min(tuning.mostGain, this.gain * 1.3) : Math.max(tuning.leastGain, this.gain * 0.7);
      if (!done) continue;
      copySpots(state.spots, this.here);
      this.here.maxX = state.end();
      this.hereArea = state.laidArea(this.here);
      // The host may have told a better layout during the attempt.
      if (this.hereArea <= state.laidArea(this.best) * (1 + LEAST_MORE)) continue;
      copySpots(this.here, this.best);
      this.bestArea = this.hereArea;
    }
  }
}

import type { Rng } from "../../search/rng.ts";
import { Nearby } from "../layout/nearby.ts";
import type { WorkLayout } from "../layout/workLayout.ts";
import { SpotRefiner } from "./refineSpot.ts";
import type { SpotTuning } from "./spotTuning.ts";

/** Spots carried from sampling to descent. */
const KEPT = 3;
/** Orientations tried in one search. */
const MOST_VARIANTS = 4;

/** Finds a better spot for one copy with all others at rest. One object serves all searches of a layout. */
export class SpotSearch {
  /** The spot found by the last `run`, and its weighted overlap. */
  variant = 0;
  x = 0;
  y = 0;
  value = 0;

  private readonly state: WorkLayout;
  private readonly rng: Rng;
  private readonly tuning: SpotTuning;
  private readonly all: Nearby[];
  private readonly refiner: SpotRefiner;
  private readonly tried = new Int32Array(MOST_VARIANTS);
  private readonly keptSlot = new Int32Array(KEPT);
  private readonly keptX = new Float64Array(KEPT);
  private readonly keptY = new Float64Array(KEPT);
  private readonly keptValue = new Float64Array(KEPT);
  private kept = 0;
  private readonly point: Float64Array;

  constructor(state: WorkLayout, rng: Rng, tuning: SpotTuning) {
    this.state = state;
    this.rng = rng;
    this.tuning = tuning;
    this.all = Array.from({ length: MOST_VARIANTS }, () => new Nearby(state));
    this.refiner = new SpotRefiner(state, rng, tuning);
    this.point = this.refiner.point;
  }

  /** Looks for a spot of copy `item` with less weighted overlap than now; the spot now is the answer when none is found. */
  run(item: number): void {
    const { state, tuning } = this;
    const { spots, job } = state;
    const now = spots.variant[item]!;
    const shape = job.items[item]!.shape;
    const count = this.chooseVariants(job.variantsOf[shape]!, now);
    const weights = state.pairs.openWeights(item);
    this.kept = 0;
    const reach = job.shapes[shape]!.extent;
    for (let slot = 0; slot < count; slot++) {
      const variant = this.tried[slot]!;
      const near = this.all[slot]!;
      near.open(item, variant, weights);
      if (slot === 0) {
        const x = spots.x[item]!;
        const y = spots.y[item]!;
        this.keep(0, x, y, near.depthAt(x, y, Infinity), 0);
      }
      this.sample(near, slot, variant, item, Math.ceil(tuning.anywhere / count), tuning, count, reach);
    }
    this.descend(reach);
    state.pairs.closeWeights(item);
  }

  /** From the spots of the short list to the answer: all come nearer, and the best of them then goes all the way. */
  private descend(reach: number): void {
    const { all, tried, keptSlot, keptX, keptY, keptValue, point, refiner } = this;
    let best = 0;
    for (let k = 0; k < this.kept; k++) {
      const slot = keptSlot[k]!;
      point[0] = keptX[k]!;
      point[1] = keptY[k]!;
      keptValue[k] = refiner.approach(all[slot]!, tried[slot]!, reach, keptValue[k]!);
      keptX[k] = point[0]!;
      keptY[k] = point[1]!;
      if (keptValue[k]! < keptValue[best]!) best = k;
      if (keptValue[k]! <= 0) break;
    }
    const slot = keptSlot[best]!;
    point[0] = keptX[best]!;
    point[1] = keptY[best]!;
    this.value = refiner.settle(all[slot]!, tried[slot]!, reach, keptValue[best]!);
    this.variant = tried[slot]!;
    this.x = point[0]!;
    this.y = point[1]!;
  }

  /** The variant now first, then others that fit the window, drawn at random when there are many. */
  private chooseVariants(variants: readonly number[], now: number): number {
    const { state, tried, rng } = this;
    tried[0] = now;
    let count = 1;
    const n = variants.length;
    if (n <= MOST_VARIANTS) {
      for (const variant of variants) if (variant !== now && state.fitsLength(variant)) tried[count++] = variant;
      return count;
    }
    for (let k = 0; k < 2 * MOST_VARIANTS && count < MOST_VARIANTS; k++) {
      const variant = variants[rng.below(n)]!;
      if (!state.fitsLength(variant)) continue;
      if (!tried.subarray(0, count).includes(variant)) tried[count++] = variant;
    }
    return count;
  }

  private sample(
    near: Nearby,
    slot: number,
    variant: number,
    item: number,
    anywhere: number,
    tuning: SpotTuning,
    share: number,
    reach: number,
  ): void {
    const { state, rng } = this;
    const lowX = state.lowX(variant);
    const lowY = state.lowY(variant);
    const spanX = Math.max(0, state.highX(variant) - lowX);
    const spanY = Math.max(0, state.highY(variant) - lowY);
    const nearby = Math.ceil(tuning.nearby / share);
    const radius = tuning.spread * reach;
    const x = state.spots.x[item]!;
    const y = state.spots.y[item]!;
    for (let k = 0; k < nearby; k++) {
      const px = Math.min(Math.max(x + (2 * rng.unit() - 1) * radius, lowX), lowX + spanX);
      const py = Math.min(Math.max(y + (2 * rng.unit() - 1) * radius, lowY), lowY + spanY);
      this.ask(near, slot, px, py, reach);
    }
    const met = near.met();
    const corners = met > 0 ? Math.ceil(tuning.corners / share) : 0;
    for (let k = 0; k < corners; k++) {
      if (!near.randomCorner(rng, met, this.point)) continue;
      const px = this.point[0]!;
      const py = this.point[1]!;
      if (px < lowX || px > lowX + spanX || py < lowY || py > lowY + spanY) continue;
      this.ask(near, slot, px, py, reach);
    }
    for (let k = 0; k < anywhere; k++)
      this.ask(near, slot, lowX + rng.unit() * spanX, lowY + rng.unit() * spanY, reach);
  }

  private ask(near: Nearby, slot: number, x: number, y: number, reach: number): void {
    if (this.state.isMatched && this.state.job.variants[this.tried[slot]!]!.lattice !== null) {
      this.point[0] = x;
      this.point[1] = y;
      this.state.toPattern(this.tried[slot]!, this.point);
      this.weigh(near, slot, this.point[0]!, this.point[1]!, reach);
    } else this.weigh(near, slot, x, y, reach);
  }

  private weigh(near: Nearby, slot: number, x: number, y: number, reach: number): void {
    const limit = this.kept < KEPT ? Infinity : this.keptValue[KEPT - 1]!;
    const value = near.depthAt(x, y, limit);
    if (value < limit) this.keep(slot, x, y, value, reach * 0.02);
  }

  /** Puts a spot into the sorted short list, unless a better one lies within `apart` of it. */
  private keep(slot: number, x: number, y: number, value: number, apart: number): void {
    const { keptSlot, keptX, keptY, keptValue } = this;
    let at = this.kept < KEPT ? this.kept : KEPT - 1;
    for (let k = 0; k < this.kept; k++) {
      if (keptSlot[k] !== slot || Math.abs(keptX[k]! - x) > apart || Math.abs(keptY[k]! - y) > apart) continue;
      if (keptValue[k]! <= value) return;
      at = k;
      break;
    }
    if (at === this.kept) this.kept++;
    while (at > 0 && keptValue[at - 1]! > value) {
      keptSlot[at] = keptSlot[at - 1]!;
      keptX[at] = keptX[at - 1]!;
      keptY[at] = keptY[at - 1]!;
      keptValue[at] = keptValue[at - 1]!;
      at--;
    }
    keptSlot[at] = slot;
    keptX[at] = x;
    keptY[at] = y;
    keptValue[at] = value;
  }
}

import type { Rng } from "../../search/rng.ts";
import { orientationKey } from "../compile/compileJob.ts";
import type { WorkLayout } from "../layout/workLayout.ts";
import { byFallingArea } from "../starts/bottomLeft.ts";

export interface DisruptTuning {
  /** Failures in a row after which disruptions are at their strongest: chances of a fresh start and of one more exchange. */
  readonly failuresToWorry: number;
  readonly freshStarts: number;
  readonly moreExchanges: number;
  /** Share of disruptions that move a whole section of the strip. */
  readonly sections: number;
}

/** Changes a stuck layout by more than one copy's move, for the search to go on from. */
export class Disruptor {
  private readonly state: WorkLayout;
  private readonly rng: Rng;
  private readonly tuning: DisruptTuning;
  private readonly bySize: readonly number[];

  constructor(state: WorkLayout, rng: Rng, tuning: DisruptTuning) {
    this.state = state;
    this.rng = rng;
    this.tuning = tuning;
    this.bySize = byFallingArea(state);
  }

  /** Changes the layout at hand: more the longer nothing has come of it. */
  run(failures: number): void {
    const { rng, tuning } = this;
    const worry = Math.min(1, failures / tuning.failuresToWorry);
    if (rng.unit() < tuning.freshStarts * worry) {
      this.scatter();
      return;
    }
    if (rng.unit() < tuning.sections * worry) {
      if (rng.unit() < 0.5) this.passOn();
      else if (!this.turnSection()) this.exchange();
      return;
    }
    do this.exchange();
    while (rng.unit() < tuning.moreExchanges * worry);
  }

  /** All copies anywhere, in any of their variants. */
  private scatter(): void {
    const { state, rng } = this;
    for (let i = 0; i < state.count; i++) {
      if (state.spots.variant[i]! < 0) continue;
      const variants = state.job.variantsOf[state.job.items[i]!.shape]!;
      const variant = variants[rng.below(variants.length)]!;
      const x = state.lowX(variant) + rng.unit() * (state.highX(variant) - state.lowX(variant));
      const y = state.lowY(variant) + rng.unit() * (state.highY(variant) - state.lowY(variant));
      state.placeWithin(i, variant, x, y);
    }
  }

  /** A section of the strip is turned by 180° as a whole, as far as its copies may be; false when none may. */
  private turnSection(): boolean {
    const { state, rng } = this;
    const { spots, job } = state;
    const span = spots.maxX - job.window.minX;
    const width = span * (0.2 + 0.5 * rng.unit());
    const from = job.window.minX + rng.unit() * (span - width);
    let turnedAny = false;
    const across = job.window.minY + job.window.maxY;
    for (let i = 0; i < state.count; i++) {
      const now = spots.variant[i]!;
      const x = spots.x[i]!;
      if (now < 0 || x < from || x > from + width) continue;
      const { shape, turnDeg, mirrored } = job.variants[now]!;
      const turned = job.variantFor.get(orientationKey(shape, { turnDeg: turnDeg + 180, mirrored }));
      if (turned === undefined || !job.variantsOf[shape]!.includes(turned)) continue;
      state.placeWithin(i, turned, 2 * from + width - x, across - spots.y[i]!);
      turnedAny = true;
    }
    return turnedAny;
  }

  /** What lies before a random cut comes to lie behind all else. */
  private passOn(): void {
    const { state, rng } = this;
    const { spots, job } = state;
    const { minX } = job.window;
    const span = spots.maxX - minX;
    const cut = rng.unit() * span;
    for (let i = 0; i < state.count; i++) {
      const now = spots.variant[i]!;
      if (now < 0) continue;
      const x = spots.x[i]!;
      state.placeWithin(i, now, x - minX < cut ? x + span - cut : x - cut, spots.y[i]!);
    }
  }

  /** Two large copies of different shape change places. */
  private exchange(): void {
    const { state, rng } = this;
    const { job, spots } = state;
    const draw = (): number => this.bySize[Math.floor(rng.unit() ** 2 * state.count)]!;
    for (let tries = 0; tries < 30; tries++) {
      const a = draw();
      const b = draw();
      if (job.items[a]!.shape === job.items[b]!.shape || spots.variant[a]! < 0 || spots.variant[b]! < 0) continue;
      const [ax, ay, bx, by] = [spots.x[a]!, spots.y[a]!, spots.x[b]!, spots.y[b]!];
      state.placeWithin(a, spots.variant[a]!, bx, by);
      state.placeWithin(b, spots.variant[b]!, ax, ay);
      return;
    }
  }
}

import type { Rng } from "../rng.ts";
import { copySpots, emptySpots, type LayState, type Spots } from "./layState.ts";
import type { Separator } from "./separate.ts";

/** Passes without progress before a try ends. */
const PATIENCE = 30;
/** Share of tries that take a smaller copy out for the one put in. */
const EXCHANGES = 0.4;

/**
 * Puts more copies into a closed region that cannot take them all at first sight: drop one in anywhere, let guided
 * local search make room, keep the layout when the laid area has grown. Ends when every copy is laid.
 */
export class RegionFiller {
  readonly best: Spots;
  private readonly state: LayState;
  private readonly separator: Separator;
  private readonly rng: Rng;
  private bestArea: number;

  constructor(state: LayState, separator: Separator, rng: Rng) {
    this.state = state;
    this.separator = separator;
    this.rng = rng;
    this.best = emptySpots(state.count);
    copySpots(state.spots, this.best);
    this.bestArea = state.laidArea(this.best);
  }

  /** A layout found elsewhere; the next try starts from it if more is laid in it. */
  offer(spots: Spots): void {
    const area = this.state.laidArea(spots);
    if (area <= this.bestArea) return;
    copySpots(spots, this.best);
    this.bestArea = area;
  }

  private areaOf(item: number): number {
    const { job } = this.state;
    return job.shapes[job.items[item]!.shape]!.area;
  }

  /** Takes out a random copy smaller than `area`. */
  private takeOut(area: number): void {
    const { spots, count } = this.state;
    const smaller: number[] = [];
    for (let i = 0; i < count; i++) if (spots.variant[i]! >= 0 && this.areaOf(i) < area) smaller.push(i);
    if (smaller.length > 0) spots.variant[smaller[this.rng.below(smaller.length)]!] = -1;
  }

  private putIn(item: number): void {
    const { state, rng } = this;
    const variants = state.job.variantsOf[state.job.items[item]!.shape]!;
    const variant = variants[rng.below(variants.length)]!;
    const x = state.lowX(variant) + rng.unit() * (state.highX(variant) - state.lowX(variant));
    const y = state.lowY(variant) + rng.unit() * (state.highY(variant) - state.lowY(variant));
    state.placeWithin(item, variant, x, y);
  }

  *run(): Generator<void, void> {
    const { state, separator, rng } = this;
    for (;;) {
      const missing = state.missing(this.best).sort((a, b) => this.areaOf(b) - this.areaOf(a));
      if (missing.length === 0) return;
      copySpots(this.best, state.spots);
      const item = missing[Math.floor(rng.unit() ** 2 * missing.length)]!;
      if (rng.unit() < EXCHANGES) this.takeOut(this.areaOf(item));
      this.putIn(item);
      state.store.trim();
      separator.resetWeights();
      yield* separator.measureAll();
      const done = yield* separator.run(PATIENCE);
      const area = state.laidArea(state.spots);
      if (!done || area <= this.bestArea) continue;
      copySpots(state.spots, this.best);
      this.best.maxX = state.end();
      this.bestArea = area;
    }
  }
}

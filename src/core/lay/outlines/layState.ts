import type { CompiledJob } from "./compileJob.ts";
import type { NoFitStore } from "./noFitStore.ts";

/** Where every copy lies, grid units: variant −1 when it is not laid. */
export interface Spots {
  readonly variant: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Right end of the window the spots were found for. */
  maxX: number;
}

export function emptySpots(count: number): Spots {
  return {
    variant: new Int32Array(count).fill(-1),
    x: new Float64Array(count),
    y: new Float64Array(count),
    maxX: 0,
  };
}

export function copySpots(from: Spots, to: Spots): void {
  to.variant.set(from.variant);
  to.x.set(from.x);
  to.y.set(from.y);
  to.maxX = from.maxX;
}

/** Touching may overlap by this many grid units: two roundings of 0.71 units and a little. */
const TOUCH_UNITS = 2;

/**
 * A layout under work: spots, how deep each pair overlaps, and the pair weights that guide the search.
 * Rows of the two matrices are copies; columns are copies, then obstacles.
 */
export class LayState {
  readonly job: CompiledJob;
  readonly store: NoFitStore;
  readonly count: number;
  readonly columns: number;
  readonly spots: Spots;
  readonly overlap: Float32Array;
  readonly weight: Float32Array;
  /** Columns by falling size: large neighbours first end a sum early. */
  readonly order: Int32Array;
  /** Right end of the window now, grid units. */
  maxX: number;
  /** Evaluations spent. */
  evaluations = 0;

  constructor(job: CompiledJob, store: NoFitStore) {
    this.job = job;
    this.store = store;
    this.count = job.items.length;
    this.columns = this.count + job.obstacles.length;
    this.spots = emptySpots(this.count);
    this.overlap = new Float32Array(this.count * this.columns);
    this.weight = new Float32Array(this.count * this.columns).fill(1);
    this.maxX = job.window.maxX;
    const size = (column: number): number =>
      column < this.count ? job.shapes[job.items[column]!.shape]!.area : Infinity;
    const columns = Array.from({ length: this.columns }, (_, i) => i);
    this.order = Int32Array.from(columns.sort((a, b) => (size(a) === size(b) ? a - b : size(b) - size(a))));
  }

  /** Depth up to which a pair only touches, grid units. */
  touch(): number {
    return TOUCH_UNITS;
  }

  /** Lowest and highest position of a variant in the window now. */
  lowX(variant: number): number {
    return this.job.window.minX - this.job.variants[variant]!.minX;
  }
  lowY(variant: number): number {
    return this.job.window.minY - this.job.variants[variant]!.minY;
  }
  highX(variant: number): number {
    return this.maxX - this.job.variants[variant]!.maxX;
  }
  highY(variant: number): number {
    return this.job.window.maxY - this.job.variants[variant]!.maxY;
  }
}

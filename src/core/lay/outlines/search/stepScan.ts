import type { Rng } from "../../search/rng.ts";
import type { CompiledJob } from "../compile/compileJob.ts";
import { writePairRow } from "../layout/neighbourRow.ts";
import type { WorkLayout } from "../layout/workLayout.ts";
import { ROW, ROW_INTS, weightedDepth } from "../noFit/depth.kernel.ts";
import { addShifted, countEqual, leastSum, placeOfEqual } from "./stepScan.kernel.ts";

/** Tables of all pairs may hold so many shifts, and those that one search adds up. */
const MOST_HELD = 3_000_000;
const MOST_ADDED = 100_000;
/** A piece may be larger than its room by the grid's rounding. */
const FIT_UNITS = 1;
/** So many shifts added up take as long as an evaluation. */
const SHIFTS_PER_EVALUATION = 220;

/** Extents of a variant's box in steps. */
interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Greatest common divisor of whole numbers, 0 counting as a multiple of all. */
function commonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** The step, grid units, of which all corners of all shapes are whole multiples apart; 0 when the grid has no such step. */
export function stepOf(job: CompiledJob): number {
  if (job.isDetailed || job.obstacles.length > 0 || job.shapes.length === 0) return 0;
  if (job.variants.some(({ turnDeg, lattice }) => turnDeg % 90 !== 0 || lattice !== null)) return 0;
  let step = 0;
  for (const { grid, grow } of job.shapes) {
    if (grow > 0) return 0;
    for (const ring of [grid.outer, ...grid.holes])
      for (let i = 0; i < ring.length; i++) {
        const apart = Math.abs(ring[i]! - grid.outer[i % 2]!);
        if (!Number.isInteger(apart)) return 0;
        step = commonDivisor(step, apart);
      }
  }
  return step;
}

/**
 * Finds the best of all places on whole steps for one copy with all others at rest, where every outline has its corners
 * on such steps: the depths of each pair are tables, and a search adds up those of all others. No place is missed, and
 * exact fits are places like any other.
 */
export class StepScan {
  /** The spot found by the last `run`, and its weighted overlap. */
  variant = 0;
  x = 0;
  y = 0;
  value = 0;

  /** Tables built so far. */
  built = 0;

  private readonly state: WorkLayout;
  private readonly rng: Rng;
  private readonly step: number;
  private readonly extents: readonly Extent[];
  private readonly tables = new Map<number, Float32Array>();
  private readonly row = new Float64Array(ROW);
  private readonly ints = new Int32Array(ROW_INTS);
  private readonly pick = Int32Array.of(0);
  private readonly probe = new Float64Array(4);
  private sums = new Float32Array(0);

  private constructor(state: WorkLayout, rng: Rng, step: number) {
    this.state = state;
    this.rng = rng;
    this.step = step;
    this.extents = state.job.variants.map(({ minX, maxX, minY, maxY }) => ({
      width: Math.round((maxX - minX) / step),
      height: Math.round((maxY - minY) / step),
    }));
  }

  /** The scan of a job that has such steps, and few enough of them; null for others. */
  static of(state: WorkLayout, rng: Rng): StepScan | null {
    const step = stepOf(state.job);
    if (step === 0) return null;
    const scan = new StepScan(state, rng, step);
    return scan.isSmall() ? scan : null;
  }

  /** Whether the tables of all pairs, and those that a search adds up, are small enough. */
  private isSmall(): boolean {
    const { variantsOf, items, shapes } = this.state.job;
    const copies = shapes.map(() => 0);
    for (const { shape } of items) copies[shape]!++;
    let held = 0;
    let added = 0;
    for (const [a, own] of variantsOf.entries())
      for (const [b, others] of variantsOf.entries())
        for (const v of own)
          for (const u of others) {
            const [moving, fixed] = [this.extents[v]!, this.extents[u]!];
            const shifts = (moving.width + fixed.width) * (moving.height + fixed.height);
            held += shifts;
            added += (shifts * copies[a]! * copies[b]!) / (items.length * others.length);
            if (held > MOST_HELD || added > MOST_ADDED) return false;
          }
    return true;
  }

  /** The largest end of the window, at most `maxX`, that is whole steps from its beginning. */
  endAtMost(maxX: number): number {
    const { minX } = this.state.job.window;
    return minX + Math.floor((maxX - minX) / this.step + 1e-6) * this.step;
  }

  /** Moves every copy to the nearest place on whole steps in the window. */
  align(): void {
    const { state, step } = this;
    const { spots, job } = state;
    for (let i = 0; i < state.count; i++) {
      const variant = spots.variant[i]!;
      if (variant < 0) continue;
      state.placeWithin(i, variant, spots.x[i]!, spots.y[i]!);
      const now = spots.variant[i]!;
      const { minX, minY } = job.variants[now]!;
      const column = Math.min(this.columnOf(i), this.columnsOf(now) - 1);
      const row = Math.min(this.rowOf(i), this.rowsOf(now) - 1);
      spots.x[i] = job.window.minX - minX + Math.max(0, column) * step;
      spots.y[i] = job.window.minY - minY + Math.max(0, row) * step;
    }
  }

  /** How many steps from the window's beginning a copy's box begins. */
  private columnOf(item: number): number {
    const { spots, job } = this.state;
    return Math.round((spots.x[item]! + job.variants[spots.variant[item]!]!.minX - job.window.minX) / this.step);
  }

  private rowOf(item: number): number {
    const { spots, job } = this.state;
    return Math.round((spots.y[item]! + job.variants[spots.variant[item]!]!.minY - job.window.minY) / this.step);
  }

  private columnsOf(variant: number): number {
    const { maxX, job } = this.state;
    return Math.floor((maxX - job.window.minX + FIT_UNITS) / this.step) - this.extents[variant]!.width + 1;
  }

  private rowsOf(variant: number): number {
    const { minY, maxY } = this.state.job.window;
    return Math.floor((maxY - minY + FIT_UNITS) / this.step) - this.extents[variant]!.height + 1;
  }

  /** Looks at every place on whole steps for copy `item`; of equally good ones any. */
  run(item: number): void {
    const { state, rng } = this;
    const { spots, job } = state;
    const now = spots.variant[item]!;
    const weights = state.pairs.openWeights(item);
    this.value = Infinity;
    let equal = 0;
    for (const variant of job.variantsOf[job.items[item]!.shape]!) {
      const columns = this.columnsOf(variant);
      const rows = this.rowsOf(variant);
      if (columns <= 0 || rows <= 0) continue;
      this.addAll(item, variant, columns, rows, weights);
      const { sums } = this;
      const least = leastSum(sums, columns * rows);
      if (least > this.value) continue;
      const count = countEqual(sums, columns * rows, least);
      if (least < this.value) equal = 0;
      this.value = least;
      equal += count;
      if (rng.unit() * equal >= count) continue;
      const place = placeOfEqual(sums, columns * rows, least, rng.below(count));
      const { minX, minY } = job.variants[variant]!;
      this.variant = variant;
      this.x = job.window.minX - minX + Math.floor(place / rows) * this.step;
      this.y = job.window.minY - minY + (place % rows) * this.step;
    }
    if (this.value === Infinity) {
      this.variant = now;
      this.x = spots.x[item]!;
      this.y = spots.y[item]!;
    }
    state.pairs.closeWeights(item);
  }

  /** Sums of weighted depths of a copy in `variant` over all places. */
  private addAll(item: number, variant: number, columns: number, rows: number, weights: Float32Array): void {
    const { state, extents } = this;
    const { spots, gravity, places } = state;
    if (this.sums.length < columns * rows) this.sums = new Float32Array(2 * columns * rows);
    const { sums } = this;
    sums.fill(0, 0, columns * rows);
    const { width, height } = extents[variant]!;
    let added = columns * rows;
    for (let p = 0; p < places.laidCount; p++) {
      const j = places.laid[p]!;
      if (j === item) continue;
      const other = spots.variant[j]!;
      const column = this.columnOf(j);
      const row = this.rowOf(j);
      const wide = width + extents[other]!.width - 1;
      const high = height + extents[other]!.height - 1;
      const weight = weights[j]! * gravity[item]! * gravity[j]!;
      const table = this.tableOf(other, variant);
      addShifted(sums, columns, rows, table, wide, high, column - width + 1, row - height + 1, weight);
      added += wide * high;
    }
    state.evaluations += Math.ceil(added / SHIFTS_PER_EVALUATION);
  }

  /** Depths of `moving` in `fixed` for every shift at which their boxes overlap, grid units. */
  private tableOf(fixed: number, moving: number): Float32Array {
    const key = fixed * this.extents.length + moving;
    let table = this.tables.get(key);
    if (table === undefined) {
      table = this.builtTable(fixed, moving);
      this.tables.set(key, table);
      this.built++;
    }
    return table;
  }

  private builtTable(fixed: number, moving: number): Float32Array {
    const { state, step, extents } = this;
    const { variants } = state.job;
    const [a, b] = [extents[fixed]!, extents[moving]!];
    const wide = a.width + b.width - 1;
    const high = a.height + b.height - 1;
    const table = new Float32Array(Math.max(0, wide * high));
    writePairRow(state, moving, fixed, 0, 0, 1, this.row, this.ints, 0);
    const rest = variants[fixed]!;
    const own = variants[moving]!;
    for (let column = 0; column < wide; column++)
      for (let row = 0; row < high; row++) {
        const { probe } = this;
        probe[0] = rest.minX - own.minX + (column - b.width + 1) * step;
        probe[1] = rest.minY - own.minY + (row - b.height + 1) * step;
        probe[2] = Infinity;
        probe[3] = 0;
        weightedDepth(probe, this.row, this.ints, this.pick, 0, 1, state.store.arena);
        table[column * high + row] = probe[3];
      }
    return table;
  }
}

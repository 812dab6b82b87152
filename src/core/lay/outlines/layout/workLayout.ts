import { type Box, ringBox } from "../../../geometry/box.ts";
import { signedArea } from "../../../geometry/ring.ts";
import { power } from "../../search/rng.ts";
import type { CompiledJob } from "../compile/compileJob.ts";
import { nearestRung, rungAbove, rungBelow, rungsInRow } from "../compile/gridLattice.ts";
import { ROW, ROW_INTS } from "../noFit/depth.kernel.ts";
import type { NoFitStore } from "../noFit/noFitStore.ts";
import { PairTable } from "./pairTable.ts";
import { PlaceGrid } from "./placeGrid.ts";

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

/** What the copies of one variant meet, as rows for the depth kernel, and the stamps of the places they were written for. */
export interface KeptRows {
  readonly rows: Float64Array;
  readonly ints: Int32Array;
  readonly grid: Int32Array;
  readonly stamp: Int32Array;
}

/** A frame is met everywhere. */
function boxOfObstacle({ grid, isFrame, x, y }: CompiledJob["obstacles"][number]): Box {
  if (isFrame) return { minX: -Infinity, maxX: Infinity, minY: -Infinity, maxY: Infinity };
  const { minX, maxX, minY, maxY } = ringBox(grid.outer);
  return { minX: x + minX, maxX: x + maxX, minY: y + minY, maxY: y + maxY };
}

/**
 * A layout being worked on, overlaps and all: spots, how much each pair overlaps (depth × gravities), the pair weights that guide the search,
 * and what lies where. Columns are copies, then obstacles.
 */
export class WorkLayout {
  readonly job: CompiledJob;
  readonly store: NoFitStore;
  readonly count: number;
  readonly columns: number;
  readonly spots: Spots;
  readonly pairs: PairTable;
  /** Kept by whoever measures overlaps; void while copies are moved otherwise. */
  readonly places: PlaceGrid;
  /** Boxes of obstacles in the region; a frame's has no end. */
  readonly obstacleBoxes: readonly Box[];
  /** How much an overlap of each column counts: large shapes are the hard ones to place. */
  readonly gravity: Float64Array;
  /** Columns by falling size: large neighbours first end a sum early. */
  readonly order: Int32Array;
  /** Right end of the window now, grid units. */
  maxX: number;
  /** Evaluations spent. */
  evaluations = 0;
  /** Whether any shape is held to the cloth's pattern. */
  readonly isMatched: boolean;
  private readonly point = new Float64Array(2);
  private readonly kept: (KeptRows | undefined)[] = [];

  constructor(job: CompiledJob, store: NoFitStore) {
    this.job = job;
    this.store = store;
    this.count = job.items.length;
    this.isMatched = job.variants.some(({ lattice }) => lattice !== null);
    this.columns = this.count + job.obstacles.length;
    this.obstacleBoxes = job.obstacles.map(boxOfObstacle);
    this.spots = emptySpots(this.count);
    this.pairs = new PairTable(this.count, this.columns);
    this.maxX = job.window.maxX;
    const sizes = Float64Array.from([
      ...job.items.map(({ shape }) => job.shapes[shape]!.area),
      ...job.obstacles.map(({ grid, isFrame }) => (isFrame ? Infinity : Math.abs(signedArea(grid.outer)))),
    ]);
    const size = (column: number): number => sizes[column]!;
    this.gravity = new Float64Array(this.columns).fill(1);
    const columns = Array.from({ length: this.columns }, (_, i) => i);
    this.order = Int32Array.from(columns.sort((a, b) => (size(a) === size(b) ? a - b : size(b) - size(a))));
    this.places = new PlaceGrid(job, this.spots, this.order, this.obstacleBoxes);
  }

  /** The rows of a variant as they were written last. */
  keptRows(variant: number): KeptRows {
    let kept = this.kept[variant];
    if (kept === undefined) {
      const { columns } = this;
      kept = {
        rows: new Float64Array(columns * ROW),
        ints: new Int32Array(columns * ROW_INTS),
        grid: new Int32Array(columns),
        stamp: new Int32Array(columns),
      };
      this.kept[variant] = kept;
    }
    return kept;
  }

  /** Lets a copy's overlaps count by its area to this power, 1 on average; overlaps must be measured anew after. */
  setGravity(exponent: number): void {
    const { job, gravity, count } = this;
    const area = (i: number): number => job.shapes[job.items[i]!.shape]!.area;
    let mean = 0;
    for (let i = 0; i < count; i++) mean += area(i) / count;
    for (let i = 0; i < count; i++) gravity[i] = power(area(i) / mean, exponent);
  }

  /** How much the copies' areas vary: standard deviation over mean. */
  areaSpread(): number {
    const { job, count } = this;
    const areas = job.items.map(({ shape }) => job.shapes[shape]!.area);
    const mean = areas.reduce((sum, area) => sum + area, 0) / count;
    const variance = areas.reduce((sum, area) => sum + (area - mean) ** 2, 0) / count;
    return Math.sqrt(variance) / mean;
  }

  /** Whether a variant is no longer than the window now (its height was seen to when the job was compiled). */
  fitsLength(variant: number): boolean {
    return this.highX(variant) >= this.lowX(variant) - 1;
  }

  /** Puts a copy as near to (x, y) as the window allows, in another variant when its own has become too long. */
  placeWithin(item: number, variant: number, x: number, y: number): void {
    const { spots, job } = this;
    let at = variant;
    if (!this.fitsLength(at)) {
      const others = job.variantsOf[job.items[item]!.shape]!;
      at = others.reduce((a, b) => (this.leastReach(b) < this.leastReach(a) ? b : a));
    }
    spots.variant[item] = at;
    spots.x[item] = Math.max(this.lowX(at), Math.min(x, this.highX(at)));
    spots.y[item] = Math.max(this.lowY(at), Math.min(y, this.highY(at)));
    if (job.variants[at]!.lattice === null) return;
    this.point[0] = spots.x[item]!;
    this.point[1] = spots.y[item]!;
    this.toPattern(at, this.point);
    spots.x[item] = this.point[0]!;
    spots.y[item] = this.point[1]!;
  }

  /** Moves a spot of a matched variant to the nearest one on the cloth's pattern within the window. */
  toPattern(variant: number, spot: Float64Array): void {
    const { lattice } = this.job.variants[variant]!;
    if (lattice === null) return;
    // Where the window holds no rung, past its end: before its beginning is no cloth.
    const within = (value: number, low: number, high: number, period: number): number => {
      if (value < low - 1) return value + period;
      return value > high + 1 && value - period >= low - 1 ? value - period : value;
    };
    const { x, y } = lattice;
    if (y !== null) spot[1] = within(nearestRung(y, spot[1]!), this.lowY(variant), this.highY(variant), y.period);
    const row = rungsInRow(lattice, spot[1]!);
    if (x === null || row === null) return;
    spot[0] = within(nearestRung(row, spot[0]!), this.lowX(variant), this.highX(variant), x.period);
  }

  /** The leftmost spot on the pattern at or right of x, for a matched variant at height y. */
  patternFrom(variant: number, x: number, y: number): number {
    const { lattice } = this.job.variants[variant]!;
    const row = lattice === null ? null : rungsInRow(lattice, y);
    return row === null ? x : rungAbove(row, x);
  }

  /** Far side of what is laid, grid units; the window's left end when nothing is. */
  end(): number {
    let end = this.job.window.minX;
    for (let i = 0; i < this.count; i++) {
      const variant = this.spots.variant[i]!;
      if (variant >= 0) end = Math.max(end, this.spots.x[i]! + this.job.variants[variant]!.maxX);
    }
    return end;
  }

  /** The far side of a variant as far left as it may lie in the window, on the pattern where it is matched. */
  private leastReach(variant: number): number {
    return this.lowX(variant) + this.job.variants[variant]!.maxX;
  }

  /** The window cannot end before this: every copy as far left as one of its variants may lie. */
  leastEnd(): number {
    const { job } = this;
    let end = job.window.minX;
    for (const { shape } of job.items) {
      const reaches = job.variantsOf[shape]!.map((v) => this.leastReach(v));
      if (reaches.length > 0) end = Math.max(end, Math.min(...reaches));
    }
    return end;
  }

  /** Area of what is laid in `spots`, square grid units. */
  laidArea(spots: Spots): number {
    let area = 0;
    for (let i = 0; i < this.count; i++)
      if (spots.variant[i]! >= 0) area += this.job.shapes[this.job.items[i]!.shape]!.area;
    return area;
  }

  /** Copies that could be laid somewhere but are not. */
  missing(spots: Spots): number[] {
    const out: number[] = [];
    for (let i = 0; i < this.count; i++)
      if (spots.variant[i]! < 0 && this.job.variantsOf[this.job.items[i]!.shape]!.length > 0) out.push(i);
    return out;
  }

  /** Lowest and highest position of a variant in the window now; of a matched one those on the pattern. */
  lowX(variant: number): number {
    const { minX, lattice } = this.job.variants[variant]!;
    const low = this.job.window.minX - minX;
    if (lattice === null || lattice.x === null) return low;
    return rungAbove(lattice.half ? { ...lattice.x, period: lattice.x.period / 2 } : lattice.x, low);
  }
  lowY(variant: number): number {
    const { minY, lattice } = this.job.variants[variant]!;
    const low = this.job.window.minY - minY;
    return lattice === null || lattice.y === null ? low : rungAbove(lattice.y, low);
  }
  highX(variant: number): number {
    const { maxX, lattice } = this.job.variants[variant]!;
    const high = this.maxX - maxX;
    if (lattice === null || lattice.x === null || high === Infinity) return high;
    return rungBelow(lattice.half ? { ...lattice.x, period: lattice.x.period / 2 } : lattice.x, high);
  }
  highY(variant: number): number {
    const { maxY, lattice } = this.job.variants[variant]!;
    const high = this.job.window.maxY - maxY;
    return Math.max(lattice === null || lattice.y === null ? high : rungBelow(lattice.y, high), this.lowY(variant));
  }
}

import type { Box } from "../../../geometry/box.ts";
import type { CompiledJob } from "../compile/compileJob.ts";

/** A cell's list has room for so many columns at first. */
const FIRST_STRIDE = 32;
/** Moving copies are asked for in so many classes of size at most, each twice the one before. */
const MOST_CLASSES = 6;
/** Cells reach beyond what can overlap by this share of the extent, for contacts a little way off. */
const CONTACT_SHARE = 0.035;

/** Where every copy lies: variant −1 when it is not laid. */
interface Places {
  readonly variant: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** The window cut into cells, for moving copies of one class of size. */
interface Level {
  /** How far such a copy reaches from its origin, at most. */
  readonly reachX: number;
  readonly reachY: number;
  cellsX: number;
  cellsY: number;
  perX: number;
  perY: number;
  stride: number;
  /** Cell q: `count[q]` columns from `q · stride` in `list`, large copies first. */
  count: Int32Array;
  list: Int32Array;
}

/**
 * Which copies and obstacles a moving copy could meet at a place: for each cell of the window and class of moving
 * copies the columns whose boxes come within reach, in the layout's own order (obstacles, then large copies first). A
 * question costs what lies near, however many copies there are; a move costs the cells it leaves and enters.
 */
export class PlaceGrid {
  /** Boxes of all columns in the region: minX, maxX, minY, maxY; endless for the frame. */
  readonly boxes: Float64Array;
  /** Copies that are laid, in the layout's order, and how many. */
  readonly laid: Int32Array;
  laidCount = 0;
  /** A number for each column that changes whenever it is sorted in anew; never 0. */
  readonly stamps: Int32Array;
  private readonly job: CompiledJob;
  private readonly spots: Places;
  private readonly order: Int32Array;
  private readonly rank: Int32Array;
  /** Place of each copy in `laid`. */
  private readonly laidRank: Int32Array;
  private readonly levels: Level[] = [];
  private readonly levelOf: Int32Array;
  private minX = 0;
  private minY = 0;

  constructor(job: CompiledJob, spots: Places, order: Int32Array, obstacleBoxes: readonly Box[]) {
    this.job = job;
    this.spots = spots;
    this.order = order;
    this.rank = new Int32Array(order.length);
    order.forEach((column, p) => {
      this.rank[column] = p;
    });
    this.boxes = new Float64Array(4 * order.length);
    for (const [k, { minX, maxX, minY, maxY }] of obstacleBoxes.entries())
      this.boxes.set([minX, maxX, minY, maxY], 4 * (job.items.length + k));
    this.laid = new Int32Array(job.items.length);
    this.stamps = new Int32Array(order.length);
    this.laidRank = new Int32Array(job.items.length);
    this.levelOf = new Int32Array(job.shapes.length);
    this.sortIntoLevels();
  }

  private sortIntoLevels(): void {
    const { job } = this;
    const reachX = job.shapes.map(() => 0);
    const reachY = job.shapes.map(() => 0);
    for (const { shape, minX, maxX, minY, maxY } of job.variants) {
      const slack = CONTACT_SHARE * job.shapes[shape]!.extent;
      reachX[shape] = Math.max(reachX[shape]!, -minX + slack, maxX + slack);
      reachY[shape] = Math.max(reachY[shape]!, -minY + slack, maxY + slack);
    }
    const reach = (shape: number): number => Math.max(reachX[shape]!, reachY[shape]!);
    const largest = Math.max(...job.shapes.map((_, shape) => reach(shape)), 1);
    const known = new Map<number, number>();
    const bounds: { reachX: number; reachY: number }[] = [];
    job.shapes.forEach((_, shape) => {
      const size = Math.min(MOST_CLASSES - 1, Math.floor(Math.log2(largest / Math.max(reach(shape), 1))));
      let level = known.get(size);
      if (level === undefined) {
        level = bounds.push({ reachX: 0, reachY: 0 }) - 1;
        known.set(size, level);
      }
      this.levelOf[shape] = level;
      const bound = bounds[level]!;
      bound.reachX = Math.max(bound.reachX, reachX[shape]!);
      bound.reachY = Math.max(bound.reachY, reachY[shape]!);
    });
    for (const bound of bounds)
      this.levels.push({
        ...bound,
        cellsX: 0,
        cellsY: 0,
        perX: 0,
        perY: 0,
        stride: FIRST_STRIDE,
        count: new Int32Array(0),
        list: new Int32Array(0),
      });
  }

  /** Sorts in everything as it lies now, for a window that ends at `maxX`. */
  rebuild(maxX: number): void {
    const { job, spots, order, laid } = this;
    const items = job.items.length;
    this.laidCount = 0;
    for (let k = 0; k < order.length; k++) this.stamps[k]!++;
    let end = job.window.minX + 1;
    for (let p = 0; p < order.length; p++) {
      const column = order[p]!;
      if (column >= items || spots.variant[column]! < 0) continue;
      this.laidRank[column] = this.laidCount;
      laid[this.laidCount++] = column;
      this.setBox(column);
      end = Math.max(end, this.boxes[4 * column + 1]!);
    }
    this.minX = job.window.minX;
    this.minY = job.window.minY;
    const width = Math.max(1, (maxX === Infinity ? end : maxX) - this.minX);
    const height = Math.max(1, job.window.maxY - this.minY);
    const side = Math.sqrt((width * height) / (2 * (this.laidCount + 1)));
    for (const level of this.levels) {
      level.cellsX = Math.max(1, Math.ceil(width / Math.max(side, level.reachX)));
      level.cellsY = Math.max(1, Math.ceil(height / Math.max(side, level.reachY)));
      level.perX = level.cellsX / width;
      level.perY = level.cellsY / height;
      this.fillLevel(level);
    }
  }

  private fillLevel(level: Level): void {
    const { order, spots } = this;
    const items = this.job.items.length;
    const cells = level.cellsX * level.cellsY;
    if (level.count.length < cells) level.count = new Int32Array(cells);
    if (level.list.length < cells * level.stride) level.list = new Int32Array(cells * level.stride);
    level.count.fill(0);
    for (let p = 0; p < order.length; p++) {
      const column = order[p]!;
      if (column < items && spots.variant[column]! < 0) continue;
      this.insert(level, column);
    }
  }

  private setBox(item: number): void {
    const { boxes, spots } = this;
    const { minX, maxX, minY, maxY } = this.job.variants[spots.variant[item]!]!;
    const o = 4 * item;
    boxes[o] = spots.x[item]! + minX;
    boxes[o + 1] = spots.x[item]! + maxX;
    boxes[o + 2] = spots.y[item]! + minY;
    boxes[o + 3] = spots.y[item]! + maxY;
  }

  /** Cell of a coordinate, kept within the window. */
  private cell(at: number, low: number, per: number, cells: number): number {
    const c = Math.floor((at - low) * per);
    return c < 0 ? 0 : c >= cells ? cells - 1 : c;
  }

  private insert(level: Level, column: number): void {
    const { boxes, rank } = this;
    const o = 4 * column;
    const x0 = this.cell(boxes[o]! - level.reachX, this.minX, level.perX, level.cellsX);
    const x1 = this.cell(boxes[o + 1]! + level.reachX, this.minX, level.perX, level.cellsX);
    const y0 = this.cell(boxes[o + 2]! - level.reachY, this.minY, level.perY, level.cellsY);
    const y1 = this.cell(boxes[o + 3]! + level.reachY, this.minY, level.perY, level.cellsY);
    const own = rank[column]!;
    for (let cy = y0; cy <= y1; cy++)
      for (let cx = x0; cx <= x1; cx++) {
        const q = cy * level.cellsX + cx;
        if (level.count[q] === level.stride) this.widen(level);
        const { list } = level;
        const base = q * level.stride;
        let at = base + level.count[q]!;
        level.count[q]!++;
        while (at > base && rank[list[at - 1]!]! > own) {
          list[at] = list[at - 1]!;
          at--;
        }
        list[at] = column;
      }
  }

  private remove(level: Level, column: number): void {
    const { boxes } = this;
    const o = 4 * column;
    const x0 = this.cell(boxes[o]! - level.reachX, this.minX, level.perX, level.cellsX);
    const x1 = this.cell(boxes[o + 1]! + level.reachX, this.minX, level.perX, level.cellsX);
    const y0 = this.cell(boxes[o + 2]! - level.reachY, this.minY, level.perY, level.cellsY);
    const y1 = this.cell(boxes[o + 3]! + level.reachY, this.minY, level.perY, level.cellsY);
    const { list } = level;
    for (let cy = y0; cy <= y1; cy++)
      for (let cx = x0; cx <= x1; cx++) {
        const q = cy * level.cellsX + cx;
        const end = q * level.stride + --level.count[q]!;
        let at = q * level.stride;
        while (list[at] !== column) at++;
        for (; at < end; at++) list[at] = list[at + 1]!;
      }
  }

  /** Doubles the room of every list. */
  private widen(level: Level): void {
    const { stride, list, count } = level;
    const wide = new Int32Array(2 * list.length);
    for (let q = 0; q < count.length && q * stride < list.length; q++)
      wide.set(list.subarray(q * stride, (q + 1) * stride), 2 * q * stride);
    level.list = wide;
    level.stride = 2 * stride;
  }

  /** Sorts in a laid copy anew after it moved. */
  move(item: number): void {
    for (const level of this.levels) this.remove(level, item);
    this.stamps[item]!++;
    this.setBox(item);
    for (const level of this.levels) this.insert(level, item);
  }

  /** Place of a laid copy among the laid ones. */
  placeOf(item: number): number {
    return this.laidRank[item]!;
  }

  /** The lists in which copies of this shape look up what is near. */
  levelFor(shape: number): Level {
    return this.levels[this.levelOf[shape]!]!;
  }

  /** The cell of a level that holds the point. */
  cellAt(level: Level, x: number, y: number): number {
    const { cellsX, cellsY } = level;
    let cx = Math.floor((x - this.minX) * level.perX);
    let cy = Math.floor((y - this.minY) * level.perY);
    if (cx < 0) cx = 0;
    else if (cx >= cellsX) cx = cellsX - 1;
    if (cy < 0) cy = 0;
    else if (cy >= cellsY) cy = cellsY - 1;
    return cy * cellsX + cx;
  }
}

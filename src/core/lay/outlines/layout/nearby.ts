import type { Rng } from "../../search/rng.ts";
import { ROW, ROW_INTS, weightedDepth } from "../noFit/depth.kernel.ts";
import { HEAD } from "../noFit/gridArena.ts";
import { EDGE } from "../noFit/gridEdges.kernel.ts";
import { writeRow } from "./neighbourRow.ts";
import type { PlaceGrid } from "./placeGrid.ts";
import type { KeptRows, WorkLayout } from "./workLayout.ts";

const NO_WEIGHTS = new Float32Array(0);
/** Where in its row a neighbour's weight stands. */
const WEIGHT_AT = 10;
/** … but in jobs of many corners only if there are so few kinds: no-fit polygons of pairs that never meet are not built. */
const WRITE_ALL_KINDS = 12;
/** In smaller layouts nearly every row is met in a search, so all are written at once and no box is asked twice. */
const WRITE_ALL_TO = 100;

/**
 * What one copy in one variant meets near a place, as rows for the depth kernel, one for each column of the layout. A
 * row is written when it is first met, so a question costs what lies near the place.
 */
export class Nearby {
  rows: Float64Array;
  ints: Int32Array;
  /** Columns met by the last question to `gather`, in the layout's order. */
  readonly pick: Int32Array;
  /** x, y, limit and result of the last question to the depth kernel. */
  readonly probe: Float64Array = new Float64Array(4);
  private readonly state: WorkLayout;
  private grid: Int32Array;
  /** Round in which a column's row was written; where all are written at once, 0 for ever. */
  private readonly written: Int32Array;
  private round = 0;
  private item = 0;
  private variant = 0;
  private weights: Float32Array = NO_WEIGHTS;
  private level: ReturnType<PlaceGrid["levelFor"]>;
  /** How far the variant reaches from its origin: minX, maxX, minY, maxY. */
  private readonly own = new Float64Array(4);
  private readonly writesAll: boolean;
  /** Whether pairs may be told apart by discs before their no-fit polygon is built. */
  private readonly hasDiscs: boolean;
  /** The copy's own discs, in the region's directions. */
  private readonly discs = new Float64Array(64);
  private discCount = 0;

  constructor(state: WorkLayout) {
    const { columns } = state;
    this.state = state;
    this.hasDiscs = state.job.isDetailed;
    const isFew = state.job.shapes.length <= WRITE_ALL_KINDS;
    this.writesAll = columns <= WRITE_ALL_TO && (isFew || !this.hasDiscs);
    this.rows = new Float64Array(columns * ROW);
    this.ints = new Int32Array(columns * ROW_INTS);
    this.pick = new Int32Array(columns);
    this.grid = new Int32Array(columns);
    this.written = new Int32Array(columns);
    this.level = state.places.levelFor(0);
  }

  /** Turns to copy `item` in `variant`; depths count by `weights` and gravity, or plainly without them. */
  open(item: number, variant: number, weights: Float32Array = NO_WEIGHTS): void {
    const { state, own } = this;
    const { shape, minX, maxX, minY, maxY } = state.job.variants[variant]!;
    this.item = item;
    this.variant = variant;
    this.weights = weights;
    this.level = state.places.levelFor(shape);
    own[0] = minX;
    own[1] = maxX;
    own[2] = minY;
    own[3] = maxY;
    if (this.writesAll) this.openAll();
    else {
      this.round++;
      if (this.hasDiscs) this.discCount = this.turnDiscs(variant, this.discs);
    }
  }

  /** Takes the rows written for this variant earlier; only those of what has moved since are written anew. */
  private openAll(): void {
    const { state, item } = this;
    const { places, count, columns } = state;
    const kept = state.keptRows(this.variant);
    this.rows = kept.rows;
    this.ints = kept.ints;
    this.grid = kept.grid;
    for (let p = 0; p < places.laidCount; p++) this.renew(kept, places.laid[p]!);
    for (let j = count; j < columns; j++) this.renew(kept, j);
    // A copy does not meet itself.
    kept.rows[item * ROW] = Infinity;
    kept.stamp[item] = 0;
  }

  /** Gives a kept row its weight, and writes it anew if its column has moved. */
  private renew({ rows, ints, grid, stamp }: KeptRows, j: number): void {
    const { state, weights } = this;
    const weight = weights.length > 0 ? weights[j]! * state.gravity[this.item]! * state.gravity[j]! : 1;
    const now = state.places.stamps[j]!;
    if (stamp[j] === now) {
      rows[j * ROW + WEIGHT_AT] = weight;
      return;
    }
    grid[j] = writeRow(state, this.variant, j, weight, rows, ints, j);
    stamp[j] = now;
  }

  /** The discs of a variant, turned, into `out`; returns how many. */
  private turnDiscs(variant: number, out: Float64Array): number {
    const { shape, cos, sin, flip } = this.state.job.variants[variant]!;
    const { discs } = this.state.job.shapes[shape]!.detail!;
    for (let k = 0; k < discs.length; k += 3) {
      const x = flip * discs[k]!;
      out[k] = cos * x - sin * discs[k + 1]!;
      out[k + 1] = sin * x + cos * discs[k + 1]!;
      out[k + 2] = discs[k + 2]!;
    }
    return discs.length;
  }

  /** How deep the copy at (x, y) lies in copy `j` at least, by their discs, as it counts; 0 when they do not tell. */
  private leastDepth(j: number, x: number, y: number): number {
    const { state, discs, discCount, weights, item } = this;
    const { spots, gravity } = state;
    const { shape, cos, sin, flip } = state.job.variants[spots.variant[j]!]!;
    const others = state.job.shapes[shape]!.detail!.discs;
    const dx = x - spots.x[j]!;
    const dy = y - spots.y[j]!;
    let least = 0;
    for (let k = 0; k < others.length; k += 3) {
      const ox = flip * others[k]!;
      const px = dx - (cos * ox - sin * others[k + 1]!);
      const py = dy - (sin * ox + cos * others[k + 1]!);
      for (let i = 0; i < discCount; i += 3) {
        const qx = px + discs[i]!;
        const qy = py + discs[i + 1]!;
        const reach = others[k + 2]! + discs[i + 2]! - least;
        const square = qx * qx + qy * qy;
        if (reach > 0 && square < reach * reach) least = others[k + 2]! + discs[i + 2]! - Math.sqrt(square);
      }
    }
    return least * (weights.length > 0 ? weights[j]! * gravity[item]! * gravity[j]! : 1);
  }

  /** Whether the no-fit polygon of the copy about copy `j` is still to be built. */
  private isNew(j: number): boolean {
    const { job, store, spots } = this.state;
    return !store.knows(job.variants[spots.variant[j]!]!, job.variants[this.variant]!);
  }

  private write(j: number): void {
    const { state, item, weights } = this;
    const { gravity } = state;
    const weight = weights.length > 0 ? weights[j]! * gravity[item]! * gravity[j]! : 1;
    this.grid[j] = writeRow(state, this.variant, j, weight, this.rows, this.ints, j);
    this.written[j] = this.round;
  }

  /** Whether an obstacle can be met at all: a frame may be too small to hold the copy. */
  private leavesRoom(j: number): boolean {
    const { state } = this;
    if (!state.job.obstacles[j - state.count]!.isFrame) return true;
    if (this.written[j] !== this.round) this.write(j);
    return this.grid[j]! >= 0;
  }

  /** How many columns can be met at all: all laid copies but this one, and the obstacles. */
  met(): number {
    const { state, item } = this;
    const own = state.spots.variant[item]! >= 0 ? 1 : 0;
    let count = state.places.laidCount - own;
    for (let j = state.count; j < state.columns; j++) if (this.leavesRoom(j)) count++;
    return count;
  }

  /** Column number `k` of those that can be met, in the layout's order. */
  private metAt(k: number): number {
    const { state, item } = this;
    const { places } = state;
    let left = k;
    for (let j = state.count; j < state.columns; j++) if (this.leavesRoom(j) && left-- === 0) return j;
    const own = state.spots.variant[item]! >= 0 ? places.placeOf(item) : Infinity;
    return places.laid[left < own ? left : left + 1]!;
  }

  /** Puts what the copy at (x, y) comes within `margin` of into `pick`, rows written; returns how many. */
  gather(x: number, y: number, margin: number): number {
    const { state, own, pick, written, item, round, level } = this;
    const { places } = state;
    const { boxes } = places;
    const x0 = x + own[0]! - margin;
    const x1 = x + own[1]! + margin;
    const y0 = y + own[2]! - margin;
    const y1 = y + own[3]! + margin;
    const { list, stride } = level;
    const q = places.cellAt(level, x, y);
    const from = q * stride;
    const to = from + level.count[q]!;
    let count = 0;
    for (let p = from; p < to; p++) {
      const j = list[p]!;
      const b = 4 * j;
      if (x1 <= boxes[b]! || x0 >= boxes[b + 1]! || y1 <= boxes[b + 2]! || y0 >= boxes[b + 3]!) continue;
      if (j === item) continue;
      if (written[j] !== round) this.write(j);
      if (this.grid[j]! >= 0) pick[count++] = j;
    }
    return count;
  }

  /**
   * A random corner of a random neighbour's no-fit polygon, in the region, into `out`. `met`: as `met()` told. False
   * when that polygon is still to be built, in a job of many of them.
   */
  randomCorner(rng: Rng, met: number, out: Float64Array): boolean {
    const k = this.metAt(rng.below(met));
    if (this.hasDiscs && !this.writesAll && k < this.state.count && this.isNew(k)) return false;
    if (this.written[k] !== this.round) this.write(k);
    const { edges, heads } = this.state.store.arena;
    const head = this.grid[k]! * HEAD;
    const e = (heads[head + 6]! + rng.below(heads[head + 7]!)) * EDGE;
    const lx = edges[e]!;
    const ly = edges[e + 1]!;
    const o = k * ROW;
    const { rows } = this;
    out[0] = rows[o + 4]! + rows[o + 6]! * lx + rows[o + 8]! * ly;
    out[1] = rows[o + 5]! + rows[o + 7]! * lx + rows[o + 9]! * ly;
    return true;
  }

  /** Weighted overlap at (x, y); stops once it reaches `limit`. */
  depthAt(x: number, y: number, limit: number): number {
    const { state, probe, level } = this;
    state.evaluations++;
    probe[0] = x;
    probe[1] = y;
    probe[2] = limit;
    probe[3] = 0;
    if (!this.writesAll) return this.depthOfMet(x, y, limit);
    const q = state.places.cellAt(level, x, y);
    const from = q * level.stride;
    this.addDepths(level.list, from, from + level.count[q]!);
    return probe[3]!;
  }

  private addDepths(pick: Int32Array, from: number, to: number): void {
    const { arena } = this.state.store;
    weightedDepth(this.probe, this.rows, this.ints, pick, from, to, arena);
  }

  /**
   * `depthAt` for rows written when first met. Writing a row costs more than asking it, so what is written is summed
   * up before the next row is written: most samples reach `limit` by then. Same sum, in the same order.
   */
  private depthOfMet(x: number, y: number, limit: number): number {
    const { state, own, pick, written, grid, item, round, level, probe } = this;
    const { places } = state;
    const { boxes } = places;
    const x0 = x + own[0]!;
    const x1 = x + own[1]!;
    const y0 = y + own[2]!;
    const y1 = y + own[3]!;
    const { list, stride } = level;
    const q = places.cellAt(level, x, y);
    const end = q * stride + level.count[q]!;
    let asked = 0;
    let count = 0;
    for (let p = q * stride; p < end; p++) {
      const j = list[p]!;
      const b = 4 * j;
      if (x1 <= boxes[b]! || x0 >= boxes[b + 1]! || y1 <= boxes[b + 2]! || y0 >= boxes[b + 3]!) continue;
      if (j === item) continue;
      if (written[j] !== round) {
        if (asked < count) {
          this.addDepths(pick, asked, count);
          asked = count;
          if (probe[3]! >= limit) return probe[3]!;
        }
        if (this.hasDiscs && limit < Infinity && j < state.count && this.isNew(j)) {
          const least = probe[3]! + this.leastDepth(j, x, y);
          if (least >= limit) return least;
        }
        this.write(j);
      }
      if (grid[j]! >= 0) pick[count++] = j;
    }
    if (asked < count) this.addDepths(pick, asked, count);
    return probe[3]!;
  }

  /** Depth at (x, y) in column `pick[p]` of the last `gather` alone; for rows without weights. */
  depthOf(p: number, x: number, y: number): number {
    const { arena } = this.state.store;
    const { probe } = this;
    probe[0] = x;
    probe[1] = y;
    probe[2] = Infinity;
    probe[3] = 0;
    weightedDepth(probe, this.rows, this.ints, this.pick, p, p + 1, arena);
    return probe[3]!;
  }
}

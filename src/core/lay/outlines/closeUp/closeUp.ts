import { BREATH, type Pause } from "../../search/breath.ts";
import type { Rng } from "../../search/rng.ts";
import { type SumRing, turnedRing } from "../compile/sumRings.ts";
import { Neighbours } from "../layout/neighbours.ts";
import type { WorkLayout } from "../layout/workLayout.ts";
import { ROW } from "../noFit/depth.kernel.ts";
import { HEAD } from "../noFit/gridArena.ts";
import { windingOf } from "../noFit/gridEdges.kernel.ts";
import { type BoxedProgram, boxedProgram, solveBoxed, startBoxed, WIDTH } from "./boxedProgram.kernel.ts";
import { boxSide } from "./boxSide.ts";
import { ClearRoom, SIDES_OF_ARCS, USUAL_SIDES } from "./clearRoom.ts";
import { edgesNear, fineEdges } from "./fineEdges.kernel.ts";

/** Larger layouts are left to the search: the work grows with the square of the copies. */
const MOST_COPIES = 200;
/** How far a copy may move in one round along each axis, as a share of the mean extent. */
const REACH = 0.12;
const ROUNDS = 8;
/** A round that shortens by a smaller share of the length is the last. */
const LEAST_GAIN = 1e-7;
/** Exchanges between two pauses, between two breaths, and in all for each unknown. */
const PIVOTS_PER_TURN = 40;
const PIVOTS_PER_BREATH = 10;
const PIVOTS_PER_UNKNOWN = 12;
/** Copies whose rows are set up between two breaths. */
const COPIES_PER_BREATH = 16;
/** Cost of an unknown beside that of the length: breaks ties. */
const TIE_COST = 1e-6;
/** Rows may be violated by this share of the reach. */
const TOLERANCE = 1e-9;
/** So many steps of the program's inner loops take as long as an evaluation. */
const WORK_PER_EVALUATION = 250;

/**
 * Moves all copies at once: every pair keeps to a convex room beside each other, and a linear program makes the
 * layout as short as these rooms allow, or moves all away from one point; then again with new rooms. Overlaps that
 * are not deep are undone on the way.
 */
export class CloseUp {
  private readonly state: WorkLayout;
  private readonly rng: Rng;
  private readonly near: Neighbours;
  private readonly room: ClearRoom;
  private readonly reach: number;
  private program: BoxedProgram | null = null;
  private readonly lowX: Float64Array;
  private readonly lowY: Float64Array;
  /** Whether unknowns count from the upper side of their range down, so that ties push the other way. */
  private readonly flipX: Int8Array;
  private readonly flipY: Int8Array;
  private least = 0;
  private readonly byDetail: boolean;
  private readonly fine = fineEdges();
  /** Outlines in detail by variant, turned when first met. */
  private readonly turned = new Map<number, SumRing>();

  /** `byDetail`: copies keep clear of each other by their outlines in detail, not by those that the search works on. */
  constructor(state: WorkLayout, rng: Rng, byDetail: boolean = false) {
    this.state = state;
    this.rng = rng;
    this.byDetail = byDetail;
    this.near = new Neighbours(state.columns);
    this.room = new ClearRoom(state.job.isDetailed ? SIDES_OF_ARCS : USUAL_SIDES);
    this.lowX = new Float64Array(state.count);
    this.lowY = new Float64Array(state.count);
    this.flipX = new Int8Array(state.count);
    this.flipY = new Int8Array(state.count);
    let extent = 0;
    for (const { shape } of state.job.items) extent += state.job.shapes[shape]!.extent / state.count;
    this.reach = REACH * extent;
  }

  /** Closes up the layout in the state; true when a round succeeded, whether shorter or not. Overlaps must be measured anew. */
  *run(leastEnd: number): Generator<Pause, boolean> {
    const { state } = this;
    if (state.count > MOST_COPIES || state.spots.variant.includes(-1)) return false;
    let done = false;
    let end = Infinity;
    this.flipX.fill(0);
    for (let round = 0; round < ROUNDS; round++) {
      this.least = Math.max(leastEnd, state.end() - this.reach);
      for (let i = 0; i < state.count; i++) this.flipY[i] = this.rng.unit() < 0.5 ? 1 : 0;
      if (!(yield* this.setUp(true)) || (yield* this.solve()) !== 1) break;
      done = true;
      this.move();
      const now = state.end();
      if (now > end - LEAST_GAIN * (now - state.job.window.minX)) break;
      end = now;
    }
    return done;
  }

  /**
   * Undoes overlaps in the window as it is, copies moving away from (x, y) as far as they can; true when that
   * succeeded. Overlaps must be measured anew.
   */
  *clear(x: number, y: number): Generator<Pause, boolean> {
    const { state } = this;
    const { spots } = state;
    if (state.count > MOST_COPIES) return false;
    for (let i = 0; i < state.count; i++) {
      this.flipX[i] = spots.x[i]! > x ? 1 : 0;
      this.flipY[i] = spots.y[i]! > y ? 1 : 0;
    }
    if (!(yield* this.setUp(false)) || (yield* this.solve()) !== 1) return false;
    this.move();
    return true;
  }

  private *solve(): Generator<Pause, number> {
    const program = this.program!;
    startBoxed(program);
    let status = 0;
    for (let spent = 0; status === 0 && spent < program.size * PIVOTS_PER_UNKNOWN; spent += PIVOTS_PER_TURN) {
      for (let pivots = 0; status === 0 && pivots < PIVOTS_PER_TURN; pivots += PIVOTS_PER_BREATH) {
        if (pivots > 0) yield BREATH;
        status = solveBoxed(program, PIVOTS_PER_BREATH, TOLERANCE);
      }
      this.state.evaluations += Math.ceil(program.work / WORK_PER_EVALUATION);
      program.work = 0;
      yield;
    }
    return status;
  }

  /** Adds a row: coefficients by unknown, lengths in reaches. */
  private addRow(least: number, terms: readonly number[]): boolean {
    const program = this.program!;
    if (program.rows === program.least.length) return false;
    const o = program.rows * WIDTH;
    for (let k = 0; k < WIDTH; k++) {
      program.index[o + k] = 2 * k < terms.length ? terms[2 * k]! : -1;
      program.factor[o + k] = terms[2 * k + 1] ?? 0;
    }
    program.least[program.rows++] = least;
    return true;
  }

  /** Unknowns and rows for the layout as it is, shortening it or not; false when some overlap is too deep. */
  private *setUp(shorten: boolean): Generator<Pause, boolean> {
    const { state, reach, rng } = this;
    const { count, spots, job } = state;
    this.program ??= boxedProgram(2 * count + 1, 24 * count + 200);
    const program = this.program;
    program.rows = 0;
    program.cost[2 * count] = 1;
    program.range[2 * count] = shorten ? (state.end() + reach - this.least) / reach : 0;
    for (let i = 0; i < count; i++) {
      const variant = spots.variant[i]!;
      program.cost[2 * i] = TIE_COST * (0.5 + rng.unit());
      program.cost[2 * i + 1] = TIE_COST * (0.5 + rng.unit());
      program.range.fill(0, 2 * i, 2 * i + 2);
      if (variant < 0) continue;
      const x = spots.x[i]!;
      const y = spots.y[i]!;
      const highX = shorten ? Infinity : state.highX(variant);
      this.lowX[i] = Math.max(state.lowX(variant), x - reach);
      this.lowY[i] = Math.max(state.lowY(variant), y - reach);
      program.range[2 * i] = (Math.min(highX, x + reach) - this.lowX[i]!) / reach;
      program.range[2 * i + 1] = (Math.min(state.highY(variant), y + reach) - this.lowY[i]!) / reach;
      const { maxX, lattice } = job.variants[variant]!;
      // Matched copies stay where the pattern has them: a program of lengths knows no steps.
      if (lattice !== null) this.holdToPattern(i, lattice.x !== null, lattice.y !== null);
      // The copy ends before the window does.
      if (shorten && x + reach + maxX > this.least)
        this.addRow((this.lowX[i]! + maxX - this.least) / reach, [2 * count, 1, 2 * i, -1]);
    }
    let { built } = state.store;
    yield BREATH;
    for (let i = 0; i < count; i++) {
      if (spots.variant[i]! < 0) continue;
      if (!this.addRooms(i)) return false;
      if (i % COPIES_PER_BREATH !== 0 && state.store.built === built) continue;
      built = state.store.built;
      yield BREATH;
    }
    return true;
  }

  private holdToPattern(item: number, holdX: boolean, holdY: boolean): void {
    const { spots } = this.state;
    if (holdX) {
      this.lowX[item] = spots.x[item]!;
      this.program!.range[2 * item] = 0;
    }
    if (holdY) {
      this.lowY[item] = spots.y[item]!;
      this.program!.range[2 * item + 1] = 0;
    }
  }

  /** Rows that keep copy `i` beside all earlier copies and the obstacles. */
  private addRooms(i: number): boolean {
    const { state, near, room, reach } = this;
    const { spots, store, count } = state;
    const x = spots.x[i]!;
    const y = spots.y[i]!;
    near.fill(state, i, spots.variant[i]!, 2 * reach);
    const { rows } = near;
    for (let k = 0; k < near.count; k++) {
      const j = near.column[k]!;
      if (j < count && j > i) continue;
      const o = k * ROW;
      const apart = j < count ? 2 * reach : reach;
      if (x < rows[o]! - apart || x > rows[o + 1]! + apart || y < rows[o + 2]! - apart || y > rows[o + 3]! + apart)
        continue;
      const dx = x - rows[o + 4]!;
      const dy = y - rows[o + 5]!;
      const lx = rows[o + 6]! * dx + rows[o + 7]! * dy;
      const ly = rows[o + 8]! * dx + rows[o + 9]! * dy;
      if (this.byDetail && j < count) {
        if (this.addFineRoom(i, j, apart)) continue;
      }
      const { heads, edges } = store.arena;
      const head = near.grid[k]! * HEAD;
      const isSquare = Math.abs(rows[o + 6]! * rows[o + 7]!) < 1e-12;
      const isInside = near.depthOf(state, k, x, y) > 0;
      const side = state.job.isDetailed && !isInside ? boxSide(rows, o, x, y) : null;
      if (side !== null && windingOf(edges, heads[head + 6]!, heads[head + 7]!, lx, ly) !== 0) {
        if (!this.addSide(i, j, side.nx, side.ny, side.least)) return false;
        continue;
      }
      const within = isSquare ? apart : apart * Math.SQRT2;
      if (!room.build(edges, heads[head + 6]!, heads[head + 7]!, lx, ly, within, isInside)) return false;
      for (let s = 0; s < room.count; s++) {
        const ax = room.sides[3 * s]!;
        const ay = room.sides[3 * s + 1]!;
        const nx = rows[o + 6]! * ax + rows[o + 8]! * ay;
        const ny = rows[o + 7]! * ax + rows[o + 9]! * ay;
        if (!this.addSide(i, j, nx, ny, room.sides[3 * s + 2]! - ax * lx - ay * ly)) return false;
      }
    }
    return true;
  }

  /** Rows that keep copy `i` beside copy `j` by their outlines in detail; where the search left them they are clear. */
  private addFineRoom(i: number, j: number, apart: number): boolean {
    const { spots } = this.state;
    const { fine, room } = this;
    const x = spots.x[i]! - spots.x[j]!;
    const y = spots.y[i]! - spots.y[j]!;
    edgesNear(fine, this.detailOf(spots.variant[j]!), this.detailOf(spots.variant[i]!), x, y, apart);
    if (!room.build(fine.edges, 0, fine.count, x, y, apart, false)) return false;
    for (let s = 0; s < room.count; s++) {
      const nx = room.sides[3 * s]!;
      const ny = room.sides[3 * s + 1]!;
      if (!this.addSide(i, j, nx, ny, room.sides[3 * s + 2]! - nx * x - ny * y)) return false;
    }
    return true;
  }

  private detailOf(variant: number): SumRing {
    let ring = this.turned.get(variant);
    if (ring === undefined) {
      const { shape, cos, sin, flip } = this.state.job.variants[variant]!;
      ring = turnedRing(this.state.job.shapes[shape]!.detail!.fine, cos, sin, flip);
      this.turned.set(variant, ring);
    }
    return ring;
  }

  /** n · (move of i − move of j) ≥ least, both written in unknowns from the low (or high) side of their ranges. */
  private addSide(i: number, j: number, nx: number, ny: number, least: number): boolean {
    const { state, reach, program } = this;
    const { spots, count } = state;
    let rest = least;
    const terms: number[] = [];
    const add = (unknown: number, factor: number, low: number, isFlipped: boolean): void => {
      rest -= factor * (isFlipped ? low + program!.range[unknown]! * reach : low);
      terms.push(unknown, isFlipped ? -factor : factor);
    };
    const addItem = (item: number, sign: number): void => {
      add(2 * item, sign * nx, this.lowX[item]! - spots.x[item]!, this.flipX[item] === 1);
      add(2 * item + 1, sign * ny, this.lowY[item]! - spots.y[item]!, this.flipY[item] === 1);
    };
    addItem(i, 1);
    if (j < count) addItem(j, -1);
    return this.addRow(rest / reach, terms);
  }

  private move(): void {
    const { state, reach, program, lowX, lowY } = this;
    const { v, range } = program!;
    const moved = (unknown: number, isFlipped: boolean): number =>
      reach * (isFlipped ? range[unknown]! - v[unknown]! : v[unknown]!);
    for (let i = 0; i < state.count; i++) {
      const variant = state.spots.variant[i]!;
      if (variant < 0) continue;
      const x = lowX[i]! + moved(2 * i, this.flipX[i] === 1);
      const y = lowY[i]! + moved(2 * i + 1, this.flipY[i] === 1);
      state.spots.x[i] = Math.max(state.lowX(variant), x);
      state.spots.y[i] = Math.max(state.lowY(variant), Math.min(state.highY(variant), y));
    }
  }
}

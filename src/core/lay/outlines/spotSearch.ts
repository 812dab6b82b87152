import type { Rng } from "../rng.ts";
import { nearestExit, ROW } from "./depth.kernel.ts";
import type { LayState } from "./layState.ts";
import { Neighbours } from "./neighbours.ts";

/** How a copy's new spot is looked for; shares of the copy's size where lengths are meant. */
export interface SpotTuning {
  /** Samples anywhere in the window, near the spot now, and at corners of no-fit polygons. */
  readonly anywhere: number;
  readonly nearby: number;
  readonly corners: number;
  /** Spread of the nearby samples. */
  readonly spread: number;
  /** First and last step of the descent. */
  readonly firstStep: number;
  readonly lastStep: number;
  /** How far off an outline still counts for exact contact. */
  readonly snapReach: number;
}

export const SPOT_TUNING: SpotTuning = {
  anywhere: 20,
  nearby: 10,
  corners: 10,
  spread: 0.25,
  firstStep: 0.12,
  lastStep: 0.01,
  snapReach: 0.03,
};

/** Spots carried from sampling to descent. */
const KEPT = 3;
/** Orientations tried in one search. */
const MOST_VARIANTS = 4;
/** Lines of contact weighed against each other, and rounds of doing so. */
const MOST_LINES = 10;
const SNAP_ROUNDS = 4;

/** Finds a better spot for one copy with all others at rest. One object serves all searches of a layout. */
export class SpotSearch {
  /** The spot found by the last `run`, and its weighted overlap. */
  variant = 0;
  x = 0;
  y = 0;
  value = 0;

  private readonly state: LayState;
  private readonly rng: Rng;
  private readonly tuning: SpotTuning;
  private readonly all: Neighbours[];
  private readonly local: Neighbours;
  private readonly tried = new Int32Array(MOST_VARIANTS);
  private readonly keptSlot = new Int32Array(KEPT);
  private readonly keptX = new Float64Array(KEPT);
  private readonly keptY = new Float64Array(KEPT);
  private readonly keptValue = new Float64Array(KEPT);
  private kept = 0;
  private lineCount = 0;
  private readonly lines = new Float64Array(MOST_LINES * 3);
  private readonly exit = new Float64Array(3);
  private readonly point = new Float64Array(2);

  constructor(state: LayState, rng: Rng, tuning: SpotTuning) {
    this.state = state;
    this.rng = rng;
    this.tuning = tuning;
    this.all = Array.from({ length: MOST_VARIANTS }, () => new Neighbours(state.columns));
    this.local = new Neighbours(state.columns);
  }

  /** Looks for a spot of copy `item` with less weighted overlap than now; the spot now is the answer when none is found. */
  run(item: number): void {
    const { state, tuning } = this;
    const { spots, job } = state;
    const now = spots.variant[item]!;
    const shape = job.items[item]!.shape;
    const count = this.chooseVariants(job.variantsOf[shape]!, now);
    this.kept = 0;
    const reach = job.shapes[shape]!.extent;
    for (let slot = 0; slot < count; slot++) {
      const variant = this.tried[slot]!;
      const near = this.all[slot]!;
      near.fill(state, item, variant, true);
      const lowX = state.lowX(variant);
      const highX = state.highX(variant);
      near.bin(lowX, highX);
      if (slot === 0) {
        const x = spots.x[item]!;
        const y = spots.y[item]!;
        this.keep(0, x, y, near.depthAt(state, x, y, Infinity), 0);
      }
      this.sample(near, slot, variant, item, Math.ceil(tuning.anywhere / count), tuning, count, reach);
    }
    this.variant = now;
    this.x = spots.x[item]!;
    this.y = spots.y[item]!;
    this.value = Infinity;
    for (let k = 0; k < this.kept && this.value > 0; k++) {
      const slot = this.keptSlot[k]!;
      this.point[0] = this.keptX[k]!;
      this.point[1] = this.keptY[k]!;
      const value = this.refine(this.all[slot]!, this.tried[slot]!, reach, this.keptValue[k]!);
      if (value >= this.value) continue;
      this.value = value;
      this.variant = this.tried[slot]!;
      this.x = this.point[0]!;
      this.y = this.point[1]!;
    }
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
    near: Neighbours,
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
    const corners = near.count > 0 ? Math.ceil(tuning.corners / share) : 0;
    for (let k = 0; k < corners; k++) {
      near.randomCorner(state, rng, this.point);
      const px = this.point[0]!;
      const py = this.point[1]!;
      if (px < lowX || px > lowX + spanX || py < lowY || py > lowY + spanY) continue;
      this.ask(near, slot, px, py, reach);
    }
    for (let k = 0; k < anywhere; k++)
      this.ask(near, slot, lowX + rng.unit() * spanX, lowY + rng.unit() * spanY, reach);
  }

  private ask(near: Neighbours, slot: number, x: number, y: number, reach: number): void {
    const limit = this.kept < KEPT ? Infinity : this.keptValue[KEPT - 1]!;
    const value = near.depthAt(this.state, x, y, limit);
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

  /** Descends from `point`, then snaps to exact contact; leaves the end in `point` and returns its value. */
  private refine(all: Neighbours, variant: number, reach: number, start: number): number {
    if (start <= 0) return start;
    const { state, tuning, point, local } = this;
    const room = reach * 0.6;
    const lowX = Math.max(state.lowX(variant), point[0]! - room);
    const highX = Math.min(state.highX(variant), point[0]! + room);
    const lowY = Math.max(state.lowY(variant), point[1]! - room);
    const highY = Math.min(state.highY(variant), point[1]! + room);
    local.narrow(all, lowX, highX, lowY, highY);
    const value = this.descend(start, reach * tuning.firstStep, reach * tuning.lastStep, lowX, highX, lowY, highY);
    return value > 0 ? this.snap(value, reach * tuning.snapReach, lowX, highX, lowY, highY) : value;
  }

  /** Tries both ways along one of four axes at a time; longer steps after success, shorter ones after failure. */
  private descend(
    start: number,
    firstStep: number,
    lastStep: number,
    lowX: number,
    highX: number,
    lowY: number,
    highY: number,
  ): number {
    const { state, rng, point, local } = this;
    let value = start;
    let stepX = firstStep;
    let stepY = firstStep;
    while (value > 0 && (stepX > lastStep || stepY > lastStep)) {
      const axis = rng.below(4);
      const dx = axis === 1 ? 0 : stepX;
      const dy = axis === 0 ? 0 : axis === 3 ? -stepY : stepY;
      let bestX = point[0]!;
      let bestY = point[1]!;
      let best = value;
      for (let way = -1; way <= 1; way += 2) {
        const x = Math.min(Math.max(point[0]! + way * dx, lowX), highX);
        const y = Math.min(Math.max(point[1]! + way * dy, lowY), highY);
        const there = local.depthAt(state, x, y, best);
        if (there >= best) continue;
        best = there;
        bestX = x;
        bestY = y;
      }
      const factor = best < value ? 1.1 : 0.5;
      if (dx !== 0) stepX *= factor;
      if (dy !== 0) stepY *= factor;
      value = best;
      point[0] = bestX;
      point[1] = bestY;
    }
    return value;
  }

  /** Moves to where the lines of near contact meet, as long as that lessens the overlap. */
  private snap(start: number, near: number, lowX: number, highX: number, lowY: number, highY: number): number {
    const { point } = this;
    let value = start;
    for (let round = 0; round < SNAP_ROUNDS && value > 0; round++) {
      const count = this.contactLines(near, lowX, highX, lowY, highY);
      const before = value;
      const fromX = point[0]!;
      const fromY = point[1]!;
      for (let i = 0; i < count && value > 0; i++) {
        const nx = this.lines[3 * i]!;
        const ny = this.lines[3 * i + 1]!;
        const d = this.lines[3 * i + 2]!;
        if (d > 0) value = this.trySpot(fromX + d * nx, fromY + d * ny, value, lowX, highX, lowY, highY);
        for (let j = 0; j < i && value > 0; j++) {
          const mx = this.lines[3 * j]!;
          const my = this.lines[3 * j + 1]!;
          const e = this.lines[3 * j + 2]!;
          const det = nx * my - ny * mx;
          if (Math.abs(det) < 0.02) continue;
          const dx = (d * my - e * ny) / det;
          const dy = (e * nx - d * mx) / det;
          if (Math.abs(dx) > 2 * near || Math.abs(dy) > 2 * near) continue;
          value = this.trySpot(fromX + dx, fromY + dy, value, lowX, highX, lowY, highY);
        }
      }
      if (value >= before) break;
    }
    return value;
  }

  private trySpot(
    x: number,
    y: number,
    value: number,
    lowX: number,
    highX: number,
    lowY: number,
    highY: number,
  ): number {
    const px = Math.min(Math.max(x, lowX), highX);
    const py = Math.min(Math.max(y, lowY), highY);
    const there = this.local.depthAt(this.state, px, py, value);
    if (there >= value) return value;
    this.point[0] = px;
    this.point[1] = py;
    return there;
  }

  private addLine(nx: number, ny: number, distance: number): void {
    if (this.lineCount === MOST_LINES) return;
    const { lines } = this;
    const at = 3 * this.lineCount++;
    lines[at] = nx;
    lines[at + 1] = ny;
    lines[at + 2] = distance;
  }

  /** Lines (unit direction, distance) along which `point` would come to touch what is near. */
  private contactLines(near: number, lowX: number, highX: number, lowY: number, highY: number): number {
    const { state, local, exit, point } = this;
    const { cells, lists, edges } = state.store.arena;
    const { rows, ints, probe } = local;
    const x = point[0]!;
    const y = point[1]!;
    probe[0] = x;
    probe[1] = y;
    this.lineCount = 0;
    if (x - lowX < near) this.addLine(-1, 0, x - lowX);
    if (highX - x < near) this.addLine(1, 0, highX - x);
    if (y - lowY < near) this.addLine(0, -1, y - lowY);
    if (highY - y < near) this.addLine(0, 1, highY - y);
    for (let k = 0; k < local.count && this.lineCount < MOST_LINES; k++) {
      const o = k * ROW;
      if (x < rows[o]! - near || x > rows[o + 1]! + near || y < rows[o + 2]! - near || y > rows[o + 3]! + near)
        continue;
      if (!nearestExit(probe, rows, ints, k, cells, lists, edges, exit)) continue;
      if (exit[0]! > -near && exit[0]! < 2 * near) this.addLine(exit[1]!, exit[2]!, exit[0]!);
    }
    return this.lineCount;
  }
}

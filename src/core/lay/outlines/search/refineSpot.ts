import type { Rng } from "../../search/rng.ts";
import type { Nearby } from "../layout/nearby.ts";
import type { WorkLayout } from "../layout/workLayout.ts";
import { nearestExit } from "../noFit/depth.kernel.ts";
import type { SpotTuning } from "./spotTuning.ts";

/** Lines of contact weighed against each other, and rounds of doing so. */
const MOST_LINES = 10;
const SNAP_ROUNDS = 4;
/** How far a spot may go, as a share of the copy's size. */
const ROOM = 0.6;

/** A step in whole periods, one at least; as it is where there is no period. */
function wholeSteps(step: number, period: number): number {
  return period === 0 ? step : period * Math.max(1, Math.round(step / period));
}

/** Takes a good spot to a better one near by: coordinate descent, then exact contact. */
export class SpotRefiner {
  /** The spot: set before `approach` and `settle`, moved by them. */
  readonly point: Float64Array = new Float64Array(2);
  private readonly state: WorkLayout;
  private readonly rng: Rng;
  private readonly tuning: SpotTuning;
  private readonly lines = new Float64Array(MOST_LINES * 3);
  private lineCount = 0;
  /** The variant at hand, and the periods of its lattice; 0 where it may lie anywhere. */
  private variant = 0;
  private periodX = 0;
  private periodY = 0;
  /** Where the spot may go: lowest x, highest x, lowest y, highest y. */
  private readonly bounds = new Float64Array(4);
  private readonly moved = new Float64Array(2);
  private readonly exit = new Float64Array(3);

  constructor(state: WorkLayout, rng: Rng, tuning: SpotTuning) {
    this.state = state;
    this.rng = rng;
    this.tuning = tuning;
  }

  /** Descends from `point` by steps that do not get small; leaves the end in `point` and returns its value. */
  approach(near: Nearby, variant: number, reach: number, start: number): number {
    const { tuning } = this;
    if (start <= 0) return start;
    this.open(variant, reach);
    return this.descend(near, start, reach * tuning.firstStep, reach * tuning.middleStep);
  }

  /** Descends from `point` by small steps, then snaps to exact contact; leaves the end in `point` and returns its value. */
  settle(near: Nearby, variant: number, reach: number, start: number): number {
    const { tuning } = this;
    if (start <= 0) return start;
    this.open(variant, reach);
    const value = this.descend(near, start, reach * tuning.middleStep, reach * tuning.lastStep);
    return value > 0 ? this.snap(near, value, reach * tuning.snapReach) : value;
  }

  /** Turns to a variant, which stays within a part of its reach from `point`. */
  private open(variant: number, reach: number): void {
    const { state, point, bounds } = this;
    const { lattice } = state.job.variants[variant]!;
    this.variant = variant;
    this.periodX = lattice?.x?.period ?? 0;
    this.periodY = lattice?.y?.period ?? 0;
    const room = reach * ROOM;
    const roomX = wholeSteps(room, this.periodX);
    const roomY = wholeSteps(room, this.periodY);
    bounds[0] = Math.max(state.lowX(variant), point[0]! - roomX);
    bounds[1] = Math.min(state.highX(variant), point[0]! + roomX);
    bounds[2] = Math.max(state.lowY(variant), point[1]! - roomY);
    bounds[3] = Math.min(state.highY(variant), point[1]! + roomY);
  }

  /** Tries both ways along one of four axes at a time; longer steps after success, shorter ones after failure. */
  private descend(near: Nearby, start: number, firstStep: number, lastStep: number): number {
    const { rng, point, bounds } = this;
    const lowX = bounds[0]!;
    const highX = bounds[1]!;
    const lowY = bounds[2]!;
    const highY = bounds[3]!;
    let value = start;
    let stepX = firstStep;
    let stepY = firstStep;
    while (value > 0 && (stepX > lastStep || stepY > lastStep)) {
      const axis = rng.below(4);
      const dx = axis === 1 ? 0 : wholeSteps(stepX, this.periodX);
      const along = wholeSteps(stepY, this.periodY);
      const dy = axis === 0 ? 0 : axis === 3 ? -along : along;
      let bestX = point[0]!;
      let bestY = point[1]!;
      let best = value;
      for (let way = -1; way <= 1; way += 2) {
        let x = Math.min(Math.max(point[0]! + way * dx, lowX), highX);
        let y = Math.min(Math.max(point[1]! + way * dy, lowY), highY);
        if (this.isMatched()) [x, y] = this.onPattern(x, y);
        const there = near.depthAt(x, y, best);
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
  private snap(near: Nearby, start: number, within: number): number {
    const { point } = this;
    let value = start;
    for (let round = 0; round < SNAP_ROUNDS && value > 0; round++) {
      const count = this.contactLines(near, within);
      const before = value;
      const fromX = point[0]!;
      const fromY = point[1]!;
      for (let i = 0; i < count && value > 0; i++) {
        const nx = this.lines[3 * i]!;
        const ny = this.lines[3 * i + 1]!;
        const d = this.lines[3 * i + 2]!;
        if (d > 0) value = this.trySpot(near, fromX + d * nx, fromY + d * ny, value);
        for (let j = 0; j < i && value > 0; j++) {
          const mx = this.lines[3 * j]!;
          const my = this.lines[3 * j + 1]!;
          const e = this.lines[3 * j + 2]!;
          const det = nx * my - ny * mx;
          if (Math.abs(det) < 0.02) continue;
          const dx = (d * my - e * ny) / det;
          const dy = (e * nx - d * mx) / det;
          if (Math.abs(dx) > 2 * within || Math.abs(dy) > 2 * within) continue;
          value = this.trySpot(near, fromX + dx, fromY + dy, value);
        }
      }
      if (value >= before) break;
    }
    return value;
  }

  private trySpot(near: Nearby, x: number, y: number, value: number): number {
    const { bounds } = this;
    let px = Math.min(Math.max(x, bounds[0]!), bounds[1]!);
    let py = Math.min(Math.max(y, bounds[2]!), bounds[3]!);
    if (this.isMatched()) [px, py] = this.onPattern(px, py);
    const there = near.depthAt(px, py, value);
    if (there >= value) return value;
    this.point[0] = px;
    this.point[1] = py;
    return there;
  }

  private isMatched(): boolean {
    return this.periodX > 0 || this.periodY > 0;
  }

  private onPattern(x: number, y: number): readonly [number, number] {
    const { moved } = this;
    moved[0] = x;
    moved[1] = y;
    this.state.toPattern(this.variant, moved);
    return [moved[0]!, moved[1]!];
  }

  private addLine(nx: number, ny: number, distance: number): void {
    if (this.lineCount === MOST_LINES) return;
    const { lines } = this;
    const at = 3 * this.lineCount++;
    lines[at] = nx;
    lines[at + 1] = ny;
    lines[at + 2] = distance;
  }

  /** Lines (unit direction, distance) along which `point` would come to touch what is within reach. */
  private contactLines(near: Nearby, within: number): number {
    const { state, exit, point, bounds } = this;
    const { rows, ints, probe, pick } = near;
    const x = point[0]!;
    const y = point[1]!;
    this.lineCount = 0;
    // A matched piece stays on its rung while it comes to touch along the other axis.
    if (this.periodX > 0) this.addLine(1, 0, 0);
    if (this.periodY > 0) this.addLine(0, 1, 0);
    if (x - bounds[0]! < within) this.addLine(-1, 0, x - bounds[0]!);
    if (bounds[1]! - x < within) this.addLine(1, 0, bounds[1]! - x);
    if (y - bounds[2]! < within) this.addLine(0, -1, y - bounds[2]!);
    if (bounds[3]! - y < within) this.addLine(0, 1, bounds[3]! - y);
    const count = near.gather(x, y, within);
    const { arena } = state.store;
    probe[0] = x;
    probe[1] = y;
    for (let p = 0; p < count && this.lineCount < MOST_LINES; p++) {
      if (!nearestExit(probe, rows, ints, pick[p]!, arena, exit)) continue;
      if (exit[0]! > -within && exit[0]! < 2 * within) this.addLine(exit[1]!, exit[2]!, exit[0]!);
    }
    return this.lineCount;
  }
}

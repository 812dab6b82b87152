import { EDGE } from "../noFit/gridEdges.kernel.ts";

/** Half-planes of one room; more are rarely needed, and without them the room is given up … */
export const USUAL_SIDES = 20;
/** … but arcs that lie in each other meet at every corner. */
export const SIDES_OF_ARCS = 40;
/** Edges this near count as touched, and may reach into the room so far, grid units. */
const SLACK = 0.5;

/**
 * The room round a point outside a no-fit polygon: a convex part of the free plane, as half-planes that each cut away
 * the outline nearest to the point until none is left within reach.
 */
export class ClearRoom {
  /** Half-plane k: points with `sides[3k] x + sides[3k + 1] y ≥ sides[3k + 2]`, in the polygon's own frame. */
  readonly sides: Float64Array;
  count = 0;
  private parts: Float64Array = new Float64Array(64 * EDGE);
  private partCount = 0;

  /** A room of so many sides at most. */
  constructor(mostSides: number) {
    this.sides = new Float64Array(mostSides * 3);
  }

  /**
   * Builds the room about (x, y) among `count` edges from number `first`, within `reach` in x and in y. When the point
   * lies inside (`isInside`) the room begins at the nearest way out. False when there is no room.
   */
  build(
    edges: Float64Array,
    first: number,
    count: number,
    x: number,
    y: number,
    reach: number,
    isInside: boolean,
  ): boolean {
    this.count = 0;
    this.gather(edges, first, count, x, y, reach);
    if (this.partCount === 0) return !isInside;
    let px = x;
    let py = y;
    if (isInside) {
      const near = this.nearest(x, y);
      px = near.x;
      py = near.y;
    }
    while (this.partCount > 0) {
      if (3 * this.count === this.sides.length) return false;
      const { x: qx, y: qy, part } = this.nearest(px, py);
      const o = part * EDGE;
      let nx = this.parts[o + 4]!;
      let ny = this.parts[o + 5]!;
      const away = Math.hypot(px - qx, py - qy);
      const beyond = nx * (px - qx) + ny * (py - qy);
      if (away > 4 && beyond < 1e-3 * away) {
        nx = (px - qx) / away;
        ny = (py - qy) / away;
      }
      this.cut(nx, ny, nx * qx + ny * qy);
    }
    return true;
  }

  /** Parts of edges within reach: start, end, direction outward. */
  private gather(edges: Float64Array, first: number, count: number, x: number, y: number, reach: number): void {
    if (this.parts.length < count * EDGE) this.parts = new Float64Array(count * EDGE);
    const { parts } = this;
    this.partCount = 0;
    for (let i = first; i < first + count; i++) {
      const e = i * EDGE;
      const ux = edges[e + 2]!;
      const uy = edges[e + 3]!;
      const length = edges[e + 4]!;
      const sx = edges[e]! - x;
      const sy = edges[e + 1]! - y;
      let from = 0;
      let to = length;
      if (Math.abs(ux) < 1e-12) {
        if (Math.abs(sx) >= reach) continue;
      } else {
        const a = (-reach - sx) / ux;
        const b = (reach - sx) / ux;
        from = Math.max(from, Math.min(a, b));
        to = Math.min(to, Math.max(a, b));
      }
      if (Math.abs(uy) < 1e-12) {
        if (Math.abs(sy) >= reach) continue;
      } else {
        const a = (-reach - sy) / uy;
        const b = (reach - sy) / uy;
        from = Math.max(from, Math.min(a, b));
        to = Math.min(to, Math.max(a, b));
      }
      if (from >= to) continue;
      const o = this.partCount++ * EDGE;
      parts[o] = x + sx + from * ux;
      parts[o + 1] = y + sy + from * uy;
      parts[o + 2] = x + sx + to * ux;
      parts[o + 3] = y + sy + to * uy;
      parts[o + 4] = uy;
      parts[o + 5] = -ux;
    }
  }

  /** The point of the outline nearest to (x, y); of equals, on the edge that has (x, y) farther before it. */
  private nearest(x: number, y: number): { x: number; y: number; part: number } {
    const { parts } = this;
    let best = Infinity;
    let bestBeyond = -Infinity;
    const found = { x: 0, y: 0, part: -1 };
    for (let k = 0; k < this.partCount; k++) {
      const o = k * EDGE;
      const dx = parts[o + 2]! - parts[o]!;
      const dy = parts[o + 3]! - parts[o + 1]!;
      const square = dx * dx + dy * dy;
      const t = square > 0 ? ((x - parts[o]!) * dx + (y - parts[o + 1]!) * dy) / square : 0;
      const at = Math.min(Math.max(t, 0), 1);
      const qx = parts[o]! + at * dx;
      const qy = parts[o + 1]! + at * dy;
      const away = Math.hypot(x - qx, y - qy);
      const beyond = parts[o + 4]! * (x - qx) + parts[o + 5]! * (y - qy);
      if (away > best + SLACK || (away > best - SLACK && beyond <= bestBeyond)) continue;
      best = Math.min(best, away);
      bestBeyond = beyond;
      found.x = qx;
      found.y = qy;
      found.part = k;
    }
    return found;
  }

  /** Adds a half-plane and takes away what of the outline lies beyond it. */
  private cut(nx: number, ny: number, least: number): void {
    const { parts, sides } = this;
    sides.set([nx, ny, least], 3 * this.count++);
    let kept = 0;
    for (let k = 0; k < this.partCount; k++) {
      const o = k * EDGE;
      const a = nx * parts[o]! + ny * parts[o + 1]! - least;
      const b = nx * parts[o + 2]! + ny * parts[o + 3]! - least;
      if (a <= SLACK && b <= SLACK) continue;
      const to = kept++ * EDGE;
      let [ax, ay, bx, by] = [parts[o]!, parts[o + 1]!, parts[o + 2]!, parts[o + 3]!];
      if (a < 0 || b < 0) {
        const t = a / (a - b);
        const mx = ax + t * (bx - ax);
        const my = ay + t * (by - ay);
        if (a < 0) [ax, ay] = [mx, my];
        else [bx, by] = [mx, my];
      }
      parts[to] = ax;
      parts[to + 1] = ay;
      parts[to + 2] = bx;
      parts[to + 3] = by;
      parts[to + 4] = parts[o + 4]!;
      parts[to + 5] = parts[o + 5]!;
    }
    this.partCount = kept;
  }
}

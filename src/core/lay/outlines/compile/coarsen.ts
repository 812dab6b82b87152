import { type Box, ringBox } from "../../../geometry/box.ts";
import { type Ring, signedArea } from "../../../geometry/ring.ts";

/** No outline is made coarser than this. */
const FEWEST = 4;

/** An outward cut at a corner: what it gains in area, and the corner that then stands in its place. */
interface Cut {
  gain: number;
  x: number;
  y: number;
  /** Corners it takes away: the corner itself, or it and the next, for which (x, y) comes in. */
  takes: 0 | 1 | 2;
}

/** A ring as a chain of corners that can be taken out. */
class Chain {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly next: Int32Array;
  readonly before: Int32Array;
  readonly isGone: Uint8Array;
  readonly cuts: Cut[];
  private readonly box: Box;
  count: number;

  constructor(ring: Ring) {
    const n = ring.length / 2;
    this.count = n;
    this.x = Float64Array.from({ length: n }, (_, i) => ring[2 * i]!);
    this.y = Float64Array.from({ length: n }, (_, i) => ring[2 * i + 1]!);
    this.next = Int32Array.from({ length: n }, (_, i) => (i + 1) % n);
    this.before = Int32Array.from({ length: n }, (_, i) => (i + n - 1) % n);
    this.isGone = new Uint8Array(n);
    this.box = ringBox(ring);
    this.cuts = Array.from({ length: n }, () => ({ gain: Infinity, x: 0, y: 0, takes: 0 }));
    for (let i = 0; i < n; i++) this.look(i);
  }

  /** Twice the area to the left of a → b → c. */
  private turn(a: number, b: number, c: number): number {
    const { x, y } = this;
    return (x[b]! - x[a]!) * (y[c]! - y[b]!) - (y[b]! - y[a]!) * (x[c]! - x[b]!);
  }

  /** Works out the cut at corner `i`: a reflex corner is bridged, an edge between two convex ones lets its neighbours meet. */
  look(i: number): void {
    const { x, y, cuts } = this;
    const cut = cuts[i]!;
    const a = this.before[i]!;
    const c = this.next[i]!;
    const turn = this.turn(a, i, c);
    cut.gain = Infinity;
    if (turn <= 0) {
      cut.gain = -turn / 2;
      cut.x = x[i]!;
      cut.y = y[i]!;
      cut.takes = 1;
      return;
    }
    const d = this.next[c]!;
    if (this.turn(i, c, d) <= 0) return;
    const abX = x[i]! - x[a]!;
    const abY = y[i]! - y[a]!;
    const cdX = x[d]! - x[c]!;
    const cdY = y[d]! - y[c]!;
    const det = abX * cdY - abY * cdX;
    if (det <= 0) return;
    const s = ((x[c]! - x[i]!) * cdY - (y[c]! - y[i]!) * cdX) / det;
    cut.x = x[i]! + s * abX;
    cut.y = y[i]! + s * abY;
    const { box } = this;
    if (cut.x < box.minX || cut.x > box.maxX || cut.y < box.minY || cut.y > box.maxY) return;
    cut.gain = Math.abs((x[c]! - x[i]!) * (cut.y - y[i]!) - (y[c]! - y[i]!) * (cut.x - x[i]!)) / 2;
    cut.takes = 2;
  }

  /** Whether nothing of the outline lies in what the cut at `i` fills, where the ring would run over itself. */
  isClear(i: number): boolean {
    const { x, y, cuts } = this;
    const cut = cuts[i]!;
    const from = cut.takes === 1 ? this.before[i]! : i;
    const to = this.next[i]!;
    const [ax, ay, bx, by, cx, cy] = [x[from]!, y[from]!, cut.x, cut.y, x[to]!, y[to]!];
    const sign = (bx - ax) * (cy - by) - (by - ay) * (cx - bx) < 0 ? -1 : 1;
    const minX = Math.min(ax, bx, cx);
    const maxX = Math.max(ax, bx, cx);
    const minY = Math.min(ay, by, cy);
    const maxY = Math.max(ay, by, cy);
    for (let k = this.next[to]!; k !== from; k = this.next[k]!) {
      const n = this.next[k]!;
      const [px, py, qx, qy] = [x[k]!, y[k]!, x[n]!, y[n]!];
      if (
        (px < minX && qx < minX) ||
        (px > maxX && qx > maxX) ||
        (py < minY && qy < minY) ||
        (py > maxY && qy > maxY)
      )
        continue;
      const inside = (mx: number, my: number, nx: number, ny: number): boolean =>
        ((nx - mx) * (py - my) - (ny - my) * (px - mx)) * sign >= 0;
      if (inside(ax, ay, bx, by) && inside(bx, by, cx, cy) && inside(cx, cy, ax, ay)) return false;
      if (
        cut.takes === 2 &&
        n !== from &&
        (cross(px, py, qx, qy, ax, ay, bx, by) || cross(px, py, qx, qy, bx, by, cx, cy))
      )
        return false;
    }
    return true;
  }

  /** Makes the cut at `i`. */
  take(i: number): void {
    const { cuts, next, before, isGone } = this;
    const cut = cuts[i]!;
    const gone = cut.takes === 1 ? i : next[i]!;
    if (cut.takes === 2) {
      this.x[i] = cut.x;
      this.y[i] = cut.y;
    }
    const left = before[gone]!;
    const right = next[gone]!;
    next[left] = right;
    before[right] = left;
    isGone[gone] = 1;
    this.count--;
    for (const k of [before[before[left]!]!, before[left]!, left, right]) this.look(k);
  }
}

/** Whether segment p–q properly crosses a–b. */
function cross(
  px: number,
  py: number,
  qx: number,
  qy: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): boolean {
  const d1 = (qx - px) * (ay - py) - (qy - py) * (ax - px);
  const d2 = (qx - px) * (by - py) - (qy - py) * (bx - px);
  if (d1 > 0 === d2 > 0) return false;
  const d3 = (bx - ax) * (py - ay) - (by - ay) * (px - ax);
  const d4 = (bx - ax) * (qy - ay) - (by - ay) * (qx - ax);
  return d3 > 0 !== d4 > 0;
}

/**
 * A ring with fewer corners that holds the given one and is at most `share` of its area larger: the cheapest outward
 * cuts first. Stays within the ring's box and simple.
 * Shapes: ring counter-clockwise. Units: any. Cost: O(n²), n corners, a few ms for a thousand.
 */
export function coarsened(ring: Ring, share: number): Ring {
  const chain = new Chain(ring);
  const { cuts, isGone } = chain;
  let left = share * signedArea(ring);
  while (chain.count > FEWEST) {
    let best = -1;
    for (let i = 0; i < cuts.length; i++)
      if (isGone[i] === 0 && cuts[i]!.gain <= left && (best < 0 || cuts[i]!.gain < cuts[best]!.gain)) best = i;
    if (best < 0) break;
    if (chain.isClear(best)) {
      left -= cuts[best]!.gain;
      chain.take(best);
    } else cuts[best]!.gain = Infinity;
  }
  const out: number[] = [];
  for (let i = 0; i < cuts.length; i++) if (isGone[i] === 0) out.push(chain.x[i]!, chain.y[i]!);
  return Float64Array.from(out);
}

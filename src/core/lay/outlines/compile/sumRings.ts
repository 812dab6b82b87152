import type { Ring } from "../../../geometry/ring.ts";
import { seededRng } from "../../search/rng.ts";

/** A ring laid open for sums: corners, and for each whether the outline turns left there. */
export interface SumRing {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly isConvex: Uint8Array;
}

/** A shape's outline, ready for sums: laid open as it rests, and to be turned as it moves. */
export interface SumShape {
  readonly resting: SumRing;
  readonly moving: Ring;
}

/** Corners are shaken by up to so many grid units, so that no three pieces of a sum meet in a point. */
const SHAKE = 400;
/** … of outlines grown by so many, so that what is shaken still holds the piece. */
const GROWTH = 1.5 * SHAKE;
/** A sharp corner moves out by so many times that at most. */
const MOST_MITER = 12;

/** The ring with every edge moved outward by `distance`. */
function grownRing(ring: Ring, distance: number): Ring {
  const n = ring.length / 2;
  const out = new Float64Array(ring.length);
  for (let i = 0; i < n; i++) {
    const a = 2 * ((i + n - 1) % n);
    const b = 2 * i;
    const c = 2 * ((i + 1) % n);
    const inLength = Math.hypot(ring[b]! - ring[a]!, ring[b + 1]! - ring[a + 1]!);
    const outLength = Math.hypot(ring[c]! - ring[b]!, ring[c + 1]! - ring[b + 1]!);
    const ux = (ring[b]! - ring[a]!) / inLength;
    const uy = (ring[b + 1]! - ring[a + 1]!) / inLength;
    const vx = (ring[c]! - ring[b]!) / outLength;
    const vy = (ring[c + 1]! - ring[b + 1]!) / outLength;
    // The corner of the two moved edges lies along the sum of their directions outward.
    const nx = uy + vy;
    const ny = -ux - vx;
    const size = nx * nx + ny * ny;
    const far = Math.min(2 / size, MOST_MITER / Math.sqrt(size));
    out[b] = ring[b]! + distance * far * nx;
    out[b + 1] = ring[b + 1]! + distance * far * ny;
  }
  return out;
}

/** A ring as it rests, for sums. */
export function restingRing(ring: Ring): SumRing {
  const count = ring.length / 2;
  const x = Float64Array.from({ length: count }, (_, i) => ring[2 * i]!);
  const y = Float64Array.from({ length: count }, (_, i) => ring[2 * i + 1]!);
  const isConvex = Uint8Array.from({ length: count }, (_, i) => {
    const a = (i + count - 1) % count;
    const c = (i + 1) % count;
    return (x[i]! - x[a]!) * (y[c]! - y[i]!) - (y[i]! - y[a]!) * (x[c]! - x[i]!) > 0 ? 1 : 0;
  });
  return { count, x, y, isConvex };
}

/** A ring, turned (and mirrored first when `flip` is −1), as it rests. */
export function turnedRing(ring: Ring, cos: number, sin: number, flip: number): SumRing {
  const n = ring.length;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i += 2) {
    const x = flip * ring[i]!;
    const at = flip < 0 ? n - 2 - i : i;
    out[at] = cos * x - sin * ring[i + 1]!;
    out[at + 1] = sin * x + cos * ring[i + 1]!;
  }
  return restingRing(out);
}

/** The ring, grown and shaken with this seed, on whole numbers: it holds the ring and lies askew to all others. */
export function shakenRing(ring: Ring, seed: number): Ring {
  const rng = seededRng(seed);
  return grownRing(ring, GROWTH).map((value) => Math.round(value + SHAKE * (2 * rng.unit() - 1)));
}

/** A ring, turned (and mirrored first when `flip` is −1), as it moves, for sums: negated, counter-clockwise. */
export function movingRing(ring: Ring, cos: number, sin: number, flip: number): SumRing {
  const n = ring.length;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i += 2) {
    const x = flip * ring[i]!;
    const y = ring[i + 1]!;
    const at = flip < 0 ? n - 2 - i : i;
    out[at] = -Math.round(cos * x - sin * y) + 0;
    out[at + 1] = -Math.round(sin * x + cos * y) + 0;
  }
  return restingRing(out);
}

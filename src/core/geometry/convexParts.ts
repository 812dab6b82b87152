import earcut from "earcut";
import type { Ring } from "./ring.ts";

function turn(points: Float64Array, a: number, b: number, c: number): number {
  const ax = points[2 * a]!;
  const ay = points[2 * a + 1]!;
  const bx = points[2 * b]!;
  const by = points[2 * b + 1]!;
  return (bx - ax) * (points[2 * c + 1]! - by) - (by - ay) * (points[2 * c]! - bx);
}

/** The part with the diagonal `a → b` of `left` and `b → a` of `right` taken out, or null when it would not be convex. */
function merged(points: Float64Array, left: number[], right: number[], a: number, b: number): number[] | null {
  const n = left.length;
  const m = right.length;
  const i = left.indexOf(b);
  const j = right.indexOf(a);
  const out: number[] = [];
  for (let k = 0; k < n; k++) out.push(left[(i + k) % n]!);
  for (let k = 1; k < m - 1; k++) out.push(right[(j + k) % m]!);
  // `out` runs b … a from the left part, then on from a round the right part; only a and b gain an angle.
  const before = turn(points, out[out.length - 1]!, out[0]!, out[1]!);
  const after = turn(points, out[n - 2]!, out[n - 1]!, out[n % out.length]!);
  return before >= 0 && after >= 0 ? out : null;
}

/**
 * Convex parts of a polygon: ear clipping, then needless diagonals taken out (Hertel & Mehlhorn 1983, from memory; at most
 * four times the least number of parts).
 *
 * Shapes: outside counter-clockwise, holes clockwise, both simple; convex rings come back counter-clockwise.
 * Units:  those of the input; exact for whole coordinates below 4.7e7, since only cross products are compared.
 * Cost:   O(n²) at worst, n small.
 */
export function convexParts(outer: Ring, holes: readonly Ring[]): Ring[] {
  const total = outer.length + holes.reduce((sum, hole) => sum + hole.length, 0);
  const points = new Float64Array(total);
  points.set(outer, 0);
  const starts: number[] = [];
  let at = outer.length;
  for (const hole of holes) {
    starts.push(at / 2);
    points.set(hole, at);
    at += hole.length;
  }
  const indices = earcut(points, starts.length > 0 ? starts : null, 2);
  const parts: (number[] | null)[] = [];
  const owner = new Map<number, number>();
  const key = (a: number, b: number): number => a * (total / 2) + b;
  const claim = (part: readonly number[], id: number): void => {
    for (let k = 0; k < part.length; k++) owner.set(key(part[k]!, part[(k + 1) % part.length]!), id);
  };
  const diagonals: [number, number][] = [];
  for (let i = 0; i < indices.length; i += 3) {
    let [a, b, c] = [indices[i]!, indices[i + 1]!, indices[i + 2]!];
    const twice = turn(points, a, b, c);
    if (twice === 0) continue;
    if (twice < 0) [b, c] = [c, b];
    const part = [a, b, c];
    claim(part, parts.length);
    parts.push(part);
    diagonals.push([a, b], [b, c], [c, a]);
  }
  for (const [a, b] of diagonals) {
    const left = owner.get(key(a, b));
    const right = owner.get(key(b, a));
    if (left === undefined || right === undefined || left === right) continue;
    const both = merged(points, parts[left]!, parts[right]!, a, b);
    if (both === null) continue;
    owner.delete(key(a, b));
    owner.delete(key(b, a));
    parts[left] = both;
    parts[right] = null;
    claim(both, left);
  }
  const rings: Ring[] = [];
  for (const part of parts) {
    if (part === null) continue;
    const ring = new Float64Array(part.length * 2);
    part.forEach((index, k) => {
      ring[2 * k] = points[2 * index]!;
      ring[2 * k + 1] = points[2 * index + 1]!;
    });
    rings.push(ring);
  }
  return rings;
}

import { type AlikeQuestion, alikeQuestions } from "./alikeQuestions.ts";
import type { YieldQuestion } from "./strapProblem.ts";

/** Room for rounding in a quotient that must be rounded down; makes a bound weaker, never wrong. */
const SLACK = 1e-7;

/**
 * A number that no packing of a × b straps, both directions, exceeds: least of area, Barnes and bar bound, each
 * taken over all questions that hold the same packings (`alikeQuestions`).
 * Cost: O(questions · (straps + points)); well under a millisecond for tens of straps.
 */
export function yieldBound(question: YieldQuestion): number {
  const alike = alikeQuestions(question);
  let bound = Infinity;
  for (const like of alike) bound = Math.min(bound, barnesBound(like));
  return Math.min(bound, barBound(alike, bound));
}

/**
 * Area bound less the cells that must stay empty when the straps are cut up into bars one unit wide: with cells
 * coloured by (x + y) mod bar, each bar takes every colour once, so the rarest colour limits the bars.
 * Source: Barnes 1979, Discrete Mathematics 26:93–100.
 */
export function barnesBound(like: AlikeQuestion): number {
  const { long, short, length, width } = like;
  const emptyCells = (bar: number): number => {
    const r = length % bar;
    const s = width % bar;
    return Math.min(r * s, (bar - r) * (bar - s));
  };
  const empty = Math.max(emptyCells(long), emptyCells(short));
  return Math.floor((length * width - empty) / (long * short) + SLACK);
}

/**
 * Most straps p + q, p with the long side along the length and q across it, so that cut into bars they fit:
 * every line across the cloth meets one of the pairs that fit the width, every line along it one that fits the
 * length, so the averages lie under the hull of those pairs. All alike questions must agree to the same (p, q).
 * Source: Isermann 1987, OR Spektrum 9:235–249 (as a linear programme; with two directions it is a plane figure).
 */
export function barBound(alike: readonly AlikeQuestion[], atMost: number): number {
  const sides = alike.map((like) => ({
    like,
    onLength: upperHull(like.alongLength),
    onWidth: upperHull(like.alongWidth),
  }));
  let best = 0;
  for (let p = 0; p <= atMost; p++) {
    let q = atMost - p;
    for (const { like, onLength, onWidth } of sides) {
      const { long, short, length, width } = like;
      const byRows = (width / long) * heightAt(onLength, (p * short) / width);
      const byColumns = (length / short) * reachAt(onWidth, (p * long) / length);
      q = Math.min(q, Math.floor(byRows + SLACK), Math.floor(byColumns + SLACK));
      if (q < 0) break;
    }
    if (q >= 0 && p + q > best) best = p + q;
    if (best >= atMost) break;
  }
  return best;
}

/** Corners (i, counts[i]) of the concave hull, flattened; counts never rise. */
function upperHull(counts: Int32Array): Float64Array {
  const hull: number[] = [];
  for (let i = 0; i < counts.length; i++) {
    while (hull.length >= 4) {
      const [ax, ay, bx, by] = hull.slice(-4) as [number, number, number, number];
      if ((bx - ax) * (counts[i]! - ay) < (by - ay) * (i - ax)) break;
      hull.length -= 2;
    }
    hull.push(i, counts[i]!);
  }
  return Float64Array.from(hull);
}

/** Height of the hull over `x`; −1 beyond its last corner. */
function heightAt(hull: Float64Array, x: number): number {
  const last = hull.length - 2;
  if (x > hull[last]! + SLACK) return -1;
  for (let i = last - 2; i >= 0; i -= 2) {
    if (x < hull[i]!) continue;
    const share = Math.min(1, (x - hull[i]!) / (hull[i + 2]! - hull[i]!));
    return hull[i + 1]! + share * (hull[i + 3]! - hull[i + 1]!);
  }
  return hull[last + 1]!;
}

/** Largest x whose height is at least `y`; −1 when none is. */
function reachAt(hull: Float64Array, y: number): number {
  if (y > hull[1]! + SLACK) return -1;
  for (let i = hull.length - 2; i >= 0; i -= 2) {
    if (hull[i + 1]! < y) continue;
    if (i === hull.length - 2) return hull[i]!;
    const fall = hull[i + 1]! - hull[i + 3]!;
    return fall <= 0 ? hull[i + 2]! : hull[i]! + ((hull[i + 1]! - y) / fall) * (hull[i + 2]! - hull[i]!);
  }
  return 0;
}

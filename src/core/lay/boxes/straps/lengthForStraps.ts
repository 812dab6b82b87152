import { hasAllPoints, normalPoints } from "./raster.ts";
import { questionOf, type StrapOnCloth, UNITS_PER_MM } from "./strapProblem.ts";
import { type StrapYield, strapYield } from "./strapYield.ts";
import { yieldBound } from "./yieldBounds.ts";

/** The length of cloth a number of straps needs. */
export interface LengthForStraps {
  /** mm. */
  readonly length: number;
  /** No shorter length holds the straps, mm. */
  readonly bound: number;
  readonly proven: boolean;
  /** The plan on that length; it may hold more straps than asked for. */
  readonly plan: StrapYield;
}

/** Lengths tried one by one from the bound upwards before the steps grow. */
const NEAR_TRIES = 24;

/**
 * Shortest length found that gives `count` straps, or null when the strap fits the cloth in no allowed direction.
 * The length is a sum of strap sides; the bound is the shortest such sum that no bound rules out, or the longest
 * that one does where there are millions of sums and only the multiples of either side are tried.
 *
 * Errors: RangeError when `count` is not a whole number above 0, or as `strapYield`.
 * Cost:   some tens of yields.
 */
export function lengthForStraps(cloth: StrapOnCloth, count: number): LengthForStraps | null {
  let best: LengthForStraps | null = null;
  for (const found of lengthsForStraps(cloth, count)) best = found;
  return best;
}

/**
 * The steps of `lengthForStraps`, one yield of cloth each: the best so far, with the bound so far. The first has
 * all straps in one direction; none come when no strap fits. `mostTries` as for `strapYield`.
 */
export function* lengthsForStraps(
  cloth: StrapOnCloth,
  count: number,
  mostTries?: number,
): Generator<LengthForStraps, void, void> {
  if (!Number.isInteger(count) || count < 1)
    throw new RangeError(`lengthForStraps: count must be a whole number above 0, not ${count}`);
  const oneWay = oneDirectionLength(cloth, count);
  if (oneWay === null) return;
  const { lengths, isAll } = candidateLengths(cloth, oneWay);
  let found = lengths.length - 1;
  const first = firstNotRuledOut(cloth, lengths, count);
  let plan = strapYield(cloth, lengths[found]!, mostTries);
  let bound = first;
  const told = (): LengthForStraps => {
    // Between two lengths that are not all there are, shorter ones may do: the bound is what was ruled out.
    const least = isAll ? lengths[bound]! : (lengths[bound - 1] ?? 0);
    return { length: lengths[found]!, bound: least, proven: isAll && found === bound, plan };
  };
  yield told();
  // Upwards from the bound, in steps that grow; then back over what was stepped over.
  let step = 1;
  for (let at = first; at < found; at += step) {
    const shorter = strapYield(cloth, lengths[at]!, mostTries);
    if (shorter.count >= count) {
      found = at;
      plan = shorter;
    }
    yield told();
    if (at - first >= NEAR_TRIES) step = Math.ceil(step * 1.5);
  }
  while (found > first) {
    const shorter = strapYield(cloth, lengths[found - 1]!, mostTries);
    if (shorter.count < count) break;
    found--;
    plan = shorter;
    yield told();
  }
  // Lengths just below the one found may be ruled out though a shorter one is not.
  bound = found;
  while (bound > first && mostStraps(cloth, lengths[bound - 1]!) >= count) bound--;
  yield told();
}

function mostStraps(cloth: StrapOnCloth, length: number): number {
  const question = questionOf(cloth, length);
  if (cloth.directions === "both") return yieldBound(question);
  const [along, across] = cloth.directions === "lengthwise" ? [question.a, question.b] : [question.b, question.a];
  return Math.floor(question.length / along) * Math.floor(question.width / across);
}

/** Index of a length such that the one before it is ruled out. */
function firstNotRuledOut(cloth: StrapOnCloth, lengths: Float64Array, count: number): number {
  let ruledOut = -1;
  let open = lengths.length - 1;
  while (open - ruledOut > 1) {
    const middle = (ruledOut + open) >> 1;
    if (mostStraps(cloth, lengths[middle]!) < count) ruledOut = middle;
    else open = middle;
  }
  return open;
}

/**
 * Sums of strap sides up to `most` mm, as lengths of cloth in mm, ascending, and whether they are all that matter:
 * straps in one direction end at multiples of one side, which are always there.
 */
function candidateLengths(
  cloth: StrapOnCloth,
  most: number,
): { readonly lengths: Float64Array; readonly isAll: boolean } {
  const { a, b, length } = questionOf(cloth, most);
  const gap = Math.round(cloth.gap * UNITS_PER_MM);
  const lengths = normalPoints(a, b, length)
    .subarray(1)
    .map((sum) => (sum - gap) / UNITS_PER_MM);
  return { lengths, isAll: cloth.directions !== "both" || hasAllPoints(a, b, length) };
}

/** Length with all straps in the better allowed direction, mm; null when none fits. */
function oneDirectionLength(cloth: StrapOnCloth, count: number): number | null {
  const { a, b, width } = questionOf(cloth, cloth.strapLength);
  const along = (length: number, across: number): number =>
    across > width ? Infinity : Math.ceil(count / Math.floor(width / across)) * length;
  const lengthwise = cloth.directions === "crosswise" ? Infinity : along(a, b);
  const crosswise = cloth.directions === "lengthwise" ? Infinity : along(b, a);
  const least = Math.min(lengthwise, crosswise);
  return least === Infinity ? null : least / UNITS_PER_MM - cloth.gap;
}

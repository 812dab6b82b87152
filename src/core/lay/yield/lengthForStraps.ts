import { normalPoints } from "./raster.ts";
import { type StrapOnCloth, tilingOf, UNITS_PER_MM } from "./strapProblem.ts";
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
 * The length is a sum of strap sides; the bound is the shortest such sum that no bound rules out.
 *
 * Errors: RangeError when `count` is not a whole number above 0, or as `strapYield`.
 * Cost:   some tens of yields.
 */
export function lengthForStraps(cloth: StrapOnCloth, count: number): LengthForStraps | null {
  if (!Number.isInteger(count) || count < 1)
    throw new RangeError(`lengthForStraps: count must be a whole number above 0, not ${count}`);
  const oneWay = oneDirectionLength(cloth, count);
  if (oneWay === null) return null;
  const lengths = candidateLengths(cloth, oneWay);
  const last = lengths.length - 1;
  const first = firstNotRuledOut(cloth, lengths, count);
  let step = 1;
  for (let at = first; at < last; at += step) {
    const plan = strapYield(cloth, lengths[at]!);
    if (plan.count >= count) return resultOf(cloth, lengths, at, first, count, plan);
    if (at - first >= NEAR_TRIES) step = Math.ceil(step * 1.5);
  }
  return resultOf(cloth, lengths, last, first, count, strapYield(cloth, lengths[last]!));
}

/** Goes back over lengths that were stepped over, and lifts the bound over lengths that are ruled out. */
function resultOf(
  cloth: StrapOnCloth,
  lengths: Float64Array,
  found: number,
  first: number,
  count: number,
  plan: StrapYield,
): LengthForStraps {
  let at = found;
  let best = plan;
  while (at > first) {
    const shorter = strapYield(cloth, lengths[at - 1]!);
    if (shorter.count < count) break;
    at--;
    best = shorter;
  }
  let bound = at;
  while (bound > first && mostStraps(cloth, lengths[bound - 1]!) >= count) bound--;
  return { length: lengths[at]!, bound: lengths[bound]!, proven: at === bound, plan: best };
}

function mostStraps(cloth: StrapOnCloth, length: number): number {
  const tiling = tilingOf(cloth, length);
  if (cloth.directions === "both") return yieldBound(tiling);
  const [along, across] = cloth.directions === "lengthwise" ? [tiling.a, tiling.b] : [tiling.b, tiling.a];
  return Math.floor(tiling.length / along) * Math.floor(tiling.width / across);
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

/** Sums of strap sides up to `most` mm, as lengths of cloth in mm, ascending. */
function candidateLengths(cloth: StrapOnCloth, most: number): Float64Array {
  const { a, b, length } = tilingOf(cloth, most);
  const gap = Math.round(cloth.gap * UNITS_PER_MM);
  return normalPoints(a, b, length)
    .subarray(1)
    .map((sum) => (sum - gap) / UNITS_PER_MM);
}

/** Length with all straps in the better allowed direction, mm; null when none fits. */
function oneDirectionLength(cloth: StrapOnCloth, count: number): number | null {
  const { a, b, width } = tilingOf(cloth, cloth.strapLength);
  const along = (length: number, across: number): number =>
    across > width ? Infinity : Math.ceil(count / Math.floor(width / across)) * length;
  const lengthwise = cloth.directions === "crosswise" ? Infinity : along(a, b);
  const crosswise = cloth.directions === "lengthwise" ? Infinity : along(b, a);
  const least = Math.min(lengthwise, crosswise);
  return least === Infinity ? null : least / UNITS_PER_MM - cloth.gap;
}

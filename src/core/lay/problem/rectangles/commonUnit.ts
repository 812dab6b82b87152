/** A length that all given lengths are whole multiples of, or the finest grid that still fits 32-bit integers. */
export interface CommonUnit {
  /** mm per unit. */
  readonly mm: number;
  /** False when lengths had to be rounded to the grid; then `gridUp` must be used for pieces. */
  readonly exact: boolean;
}

/** Largest number of units that a length may have: sums of some hundred stay below 2³¹. */
const MOST_UNITS = 1 << 24;

/**
 * Common unit of lengths in mm (all > 0) by Euclid's algorithm with a tolerance of 1e-9 of the longest.
 *
 * Sizes typed in eighths of an inch or tenths of a millimetre come out exact. Lengths without a common measure
 * (irrational, or more than seven digits) get a grid of 2⁻²⁴ of the longest. O(n log).
 */
export function commonUnit(lengths: readonly number[]): CommonUnit {
  let longest = 0;
  for (const length of lengths) longest = Math.max(longest, length);
  if (!(longest > 0)) return { mm: 1, exact: true };
  const tolerance = longest * 1e-9;
  let unit = 0;
  for (const length of lengths) {
    unit = tolerantGcd(unit, length, tolerance);
    // Euclid multiplies rounding; the length itself says again what the unit is.
    unit = length / Math.round(length / unit);
    if (unit * MOST_UNITS < longest) return { mm: longest / MOST_UNITS, exact: false };
  }
  // Euclid leaves rounding in the unit; the longest length gives the best estimate of it.
  unit = longest / Math.round(longest / unit);
  for (const length of lengths) {
    const units = length / unit;
    if (Math.abs(units - Math.round(units)) * unit > 10 * tolerance)
      return { mm: longest / MOST_UNITS, exact: false };
  }
  return { mm: unit, exact: true };
}

function tolerantGcd(a: number, b: number, tolerance: number): number {
  let x = Math.max(a, b);
  let y = Math.min(a, b);
  while (y > tolerance) {
    const rest = x % y;
    x = y;
    y = Math.min(rest, y - rest);
  }
  return x;
}

/** Units covering a length at least: rounds up unless within a millionth of a whole number of units. */
export function unitsCovering(mm: number, unit: number): number {
  return Math.ceil(mm / unit - 1e-6);
}

/** Whole units inside a length: rounds down unless within a millionth of the next. */
export function unitsInside(mm: number, unit: number): number {
  return Math.floor(mm / unit + 1e-6);
}

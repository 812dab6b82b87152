/**
 * Dual-feasible functions on whole numbers: f with f(x₁) + … + f(xₖ) ≤ f(capacity) whenever x₁ + … + xₖ ≤
 * capacity. Replacing every extent by f of it keeps a valid area bound (Fekete & Schepers 2004, Math. Methods
 * Oper. Res. 60:311–329; Carlier, Clautiaux & Moukrim 2007, Comput. Oper. Res. 34:2223–2250).
 */

/** The families below, by number: for `barFunction`. */
export const PLAIN = 0;
/** Extents over capacity − k count whole, under k nothing (k ≤ capacity / 2). */
export const WHOLE_OR_NOTHING = 1;
/** k = 1, 2, …: (k+1)x/capacity rounded down unless whole. */
export const ROUNDED_DOWN = 2;
/** Multiples of k, larger halves counted from the far side (1 ≤ k ≤ capacity / 2). */
export const STEPS_OF_K = 3;

/** Value of a family's function with parameter `k` at `x`, 0 ≤ x ≤ capacity. Exact below 2⁵³. */
export function barFunction(family: number, k: number, capacity: number, x: number): number {
  if (family === WHOLE_OR_NOTHING) {
    if (x > capacity - k) return capacity;
    return x < k ? 0 : x;
  }
  if (family === ROUNDED_DOWN) {
    const scaled = x * (k + 1);
    return scaled % capacity === 0 ? x * k : Math.floor(scaled / capacity) * capacity;
  }
  if (family === STEPS_OF_K) {
    const whole = Math.floor(capacity / k);
    if (2 * x > capacity) return 2 * (whole - Math.floor((capacity - x) / k));
    return 2 * x === capacity ? whole : 2 * Math.floor(x / k);
  }
  return x;
}

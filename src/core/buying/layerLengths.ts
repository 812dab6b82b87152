import { matchedLength } from "./quantity.ts";

/** Up to this share of a repeat too much is rounding in the arithmetic, not cloth. */
const ROUNDING = 1e-9;

/**
 * Roll taken by lengths that lie on one another. Where a pattern repeats, each length begins at the same place of the
 * pattern, so the next one is cut a whole number of repeats further on; the last ends where it ends. mm.
 *
 * Source: cut step = length rounded up to whole repeats, common practice, no source.
 */
export function rollTaken(length: number, lengths: number, repeat: number | null): number {
  return (lengths - 1) * matchedLength(length, repeat ?? 0) + length;
}

/** Longest length of which `lengths` come off a roll: the other way round. mm; never below 0. */
export function lengthFromRoll(roll: number, lengths: number, repeat: number | null): number {
  const even = roll / lengths;
  if (repeat === null || repeat <= 0 || lengths === 1) return even;
  // Either whole repeats up to an even share, or one repeat more a step and a shorter last length, which all take.
  const steps = Math.floor(even / repeat + ROUNDING);
  return Math.max(0, steps * repeat, roll - (lengths - 1) * (steps + 1) * repeat);
}

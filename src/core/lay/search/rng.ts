/** A source of repeatable randomness. Same seed, same numbers, on every machine. */
export interface Rng {
  /** Next whole number in 0 … n − 1, n ≤ 2³¹. */
  below(n: number): number;
  /** Next number in [0, 1). */
  unit(): number;
}

/**
 * Seeded generator (xorshift, 32-bit, Marsaglia 2003, J. Stat. Software 8(14)), state in an `Int32Array` so that
 * engines do not box numbers in hot loops. Seeds are mixed, so neighbouring seeds give unlike sequences.
 */
export function seededRng(seed: number): Rng {
  const state = new Int32Array(1);
  let mixed = (seed ^ 0x9e3779b9) | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  state[0] = mixed ^ (mixed >>> 16) || 0x6d2b79f5;
  const next = (): number => {
    let x = state[0]!;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    state[0] = x;
    return x >>> 0;
  };
  for (let i = 0; i < 8; i++) next();
  return {
    below: (n) => Math.floor((next() / 4294967296) * n),
    unit: () => next() / 4294967296,
  };
}

/**
 * `base` to the power of `exponent`, the same on every engine: `**` differs in the last bit from one version of V8 to
 * the next, and a search that hangs on it finds other plans. Both positive; right to some 1e-15.
 */
export function power(base: number, exponent: number): number {
  return Math.exp(exponent * Math.log(base));
}

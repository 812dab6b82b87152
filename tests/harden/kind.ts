import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";

/** What a case is drawn from. */
export interface Draw {
  below(count: number): number;
  one<T>(list: readonly T[]): T;
}

/** A kind of hardening: cases by number, each the same for the same seed. */
export interface Kind {
  readonly name: string;
  readonly about: string;
  /** A case that takes longer, ms on the clock, has no end: far more than one needs on a machine with other work. */
  readonly limitMs: number;
  /** Runs one case; what came of it in a word. Throws when it went wrong. */
  run(draw: Draw): string | Promise<string>;
  /** Closes what the cases have in common. */
  end?(): Promise<void>;
}

/** The draw of case `index` of a seed, whatever was run before it. */
export function drawOf(seed: number, index: number): Draw {
  const rng: Rng = seededRng((Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)) >>> 0);
  return { below: (count) => rng.below(count), one: (list) => list[rng.below(list.length)]! };
}

/** How a run of many cases went. */
export interface Tally {
  readonly outcomes: ReadonlyMap<string, number>;
  /** Cases that went wrong, by number. */
  readonly faults: readonly { readonly index: number; readonly reason: string }[];
  /** Cases above `SLOW_MS`, and the slowest of all: ms of processor time, and its number. */
  readonly slow: readonly { readonly ms: number; readonly index: number }[];
  readonly slowest: { readonly ms: number; readonly index: number };
  /** Seconds of processor time of all cases. */
  readonly seconds: number;
}

/** Who hears how a run goes on. */
export interface Listeners {
  /** How it stands before case `next`, now and then, and after every fault at once. */
  told?(next: number, tally: Tally, fault?: string): void;
  /** Before every case. */
  begun?(index: number): void;
  /** Cases that are not run. */
  readonly passed?: ReadonlySet<number>;
}

/** A case that takes more processor time, ms, is told. */
const SLOW_MS = 2000;
/** Ms between two times that a run tells how far it is, and cases after which it looks at the clock for that. */
const TOLD_AFTER = 2000;
const LOOKED_EVERY = 20;
/** Below so many ms on the clock no processor time is asked for: asking takes longer than many a case. */
const WORTH_ASKING = 50;

const secondsOf = ({ user, system }: NodeJS.CpuUsage): number => (user + system) / 1e6;

/** Runs the cases from `from` up to `to`. */
export async function runCases(
  kind: Kind,
  seed: number,
  from: number,
  to: number,
  { told = () => {}, begun = () => {}, passed = new Set() }: Listeners = {},
): Promise<Tally> {
  const outcomes = new Map<string, number>();
  const faults: { index: number; reason: string }[] = [];
  const slow: { ms: number; index: number }[] = [];
  let slowest = { ms: 0, index: from };
  let last = performance.now();
  const first = process.cpuUsage();
  let asked = first;
  const sofar = (): Tally => ({ outcomes, faults, slow, slowest, seconds: secondsOf(process.cpuUsage(first)) });
  for (let index = from; index < to; index++) {
    if (passed.has(index)) continue;
    begun(index);
    const clock = performance.now();
    try {
      const outcome = await kind.run(drawOf(seed, index));
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    } catch (error) {
      const reason = error instanceof Error ? (error.stack ?? error.message) : String(error);
      faults.push({ index, reason });
      told(index + 1, sofar(), reason);
    }
    const taken = performance.now() - clock;
    if (taken > WORTH_ASKING) {
      // Quick cases since it was asked last are in it too: at most what the clock says.
      const ms = Math.min(taken, 1000 * secondsOf(process.cpuUsage(asked)));
      asked = process.cpuUsage();
      if (ms > slowest.ms) slowest = { ms, index };
      if (ms > SLOW_MS) slow.push({ ms, index });
    }
    if (taken < WORTH_ASKING && (index + 1) % LOOKED_EVERY !== 0) continue;
    if (performance.now() - last < TOLD_AFTER) continue;
    told(index + 1, sofar());
    last = performance.now();
    // Cases that wait for nothing would keep every other event of the process waiting.
    await new Promise(setImmediate);
  }
  return sofar();
}

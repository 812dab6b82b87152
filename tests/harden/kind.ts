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
  /** Runs one case; what came of it in a word. Throws when it went wrong. */
  run(draw: Draw): string | Promise<string>;
  /** Closes what the cases have in common. */
  end?(): Promise<void>;
}

/** The draw of case `index` of a seed, whatever was run before it. */
function drawOf(seed: number, index: number): Draw {
  const rng: Rng = seededRng((Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)) >>> 0);
  return { below: (count) => rng.below(count), one: (list) => list[rng.below(list.length)]! };
}

/** How a run of many cases went. */
export interface Tally {
  readonly outcomes: ReadonlyMap<string, number>;
  /** Cases that went wrong, by number. */
  readonly faults: readonly { readonly index: number; readonly reason: string }[];
  /** Slowest case, ms of processor time, and its number. */
  readonly slowest: { readonly ms: number; readonly index: number };
}

/** Cases, and ms, between two times that a run tells how far it is. */
const TOLD_EVERY = 500;
const TOLD_AFTER = 20_000;
/** Below so many ms on the clock no processor time is asked for: asking takes longer than many a case. */
const WORTH_ASKING = 20;

/** Runs the cases from `from` up to `to`; `told` hears how it stands now and then, and after every fault at once. */
export async function runCases(
  kind: Kind,
  seed: number,
  from: number,
  to: number,
  told: (next: number, tally: Tally, fault?: string) => void = () => {},
  begun: (index: number) => void = () => {},
): Promise<Tally> {
  const outcomes = new Map<string, number>();
  const faults: { index: number; reason: string }[] = [];
  let slowest = { ms: 0, index: from };
  let last = performance.now();
  const step = Math.min(TOLD_EVERY, Math.max(1, Math.floor((to - from) / 100)));
  for (let index = from; index < to; index++) {
    begun(index);
    const clock = performance.now();
    const start = process.cpuUsage();
    try {
      const outcome = await kind.run(drawOf(seed, index));
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
    } catch (error) {
      const reason = error instanceof Error ? (error.stack ?? error.message) : String(error);
      faults.push({ index, reason });
      told(index + 1, { outcomes, faults, slowest }, reason);
    }
    if (performance.now() - clock > WORTH_ASKING) {
      const { user, system } = process.cpuUsage(start);
      const ms = (user + system) / 1000;
      if (ms > slowest.ms) slowest = { ms, index };
    }
    if ((index + 1 - from) % step === 0 || performance.now() - last > TOLD_AFTER) {
      told(index + 1, { outcomes, faults, slowest });
      last = performance.now();
    }
  }
  return { outcomes, faults, slowest };
}

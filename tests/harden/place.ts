import { readFileSync, renameSync, writeFileSync } from "node:fs";
import type { Tally } from "./kind.ts";

/** A case that went wrong, or that took long, by its number. */
export interface ToldCase {
  readonly index: number;
  readonly what: string;
}

/** How a run over a range of cases stands: what was drawn from which seed, and what came of it so far. */
export interface Place {
  readonly seed: number;
  /** First case of the run, and the first one behind its last. */
  readonly from: number;
  readonly to: number;
  /** The case to go on with. */
  readonly next: number;
  readonly outcomes: Readonly<Record<string, number>>;
  readonly faults: readonly ToldCase[];
  /** Cases that are passed over: they had no end, or ended the process. They are among the faults. */
  readonly passed: readonly number[];
  /** Cases that took much processor time. */
  readonly slow: readonly ToldCase[];
  readonly slowest: { readonly ms: number; readonly index: number };
  /** Seconds of processor time of all cases, what they started not counted; largest memory of a process, MB. */
  readonly seconds: number;
  readonly megabytes: number;
}

export function freshPlace(seed: number, from: number, to: number): Place {
  const nothing = { outcomes: {}, faults: [], passed: [], slow: [], slowest: { ms: 0, index: from } };
  return { seed, from, to, next: from, ...nothing, seconds: 0, megabytes: 0 };
}

/** Null where there is none, or what stands there is none. */
export function readPlace(file: string): Place | null {
  try {
    const kept: Partial<Place> = JSON.parse(readFileSync(file, "utf8"));
    return { ...freshPlace(0, 0, 0), ...kept };
  } catch {
    return null;
  }
}

/** Whole or not at all: the run may be ended at any moment. */
export function writePlace(file: string, place: Place): void {
  writeFileSync(`${file}.part`, JSON.stringify(place));
  renameSync(`${file}.part`, file);
}

/** What came of further cases, up to `next`, added to what stood before them. */
export function together(before: Place, next: number, more: Tally): Place {
  const outcomes = { ...before.outcomes };
  for (const [outcome, times] of more.outcomes) outcomes[outcome] = (outcomes[outcome] ?? 0) + times;
  const told = more.faults.map(({ index, reason }): ToldCase => ({ index, what: reason.slice(0, 4000) }));
  return {
    ...before,
    next,
    outcomes,
    faults: [...before.faults, ...told],
    slow: [...before.slow, ...more.slow.map(({ index, ms }) => ({ index, what: `${Math.round(ms)} ms` }))],
    slowest: more.slowest.ms > before.slowest.ms ? more.slowest : before.slowest,
    seconds: before.seconds + more.seconds,
    megabytes: Math.max(before.megabytes, Math.round(process.resourceUsage().maxRSS / 1024)),
  };
}

/** A case that had no end, or took the process with it, told as a fault and passed over from now on. */
export function passedOver(place: Place, index: number, what: string): Place {
  return { ...place, faults: [...place.faults, { index, what }], passed: [...place.passed, index] };
}

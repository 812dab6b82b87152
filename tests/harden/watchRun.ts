import { fork } from "node:child_process";
import { once } from "node:events";
import { passedOver, readPlace, writePlace } from "./place.ts";
import { caseNow } from "./runRange.ts";

/** A run in a process of its own. */
export interface WatchedRun {
  /** The script that runs the cases, and its words; it keeps its place in `file`. */
  readonly script: string;
  readonly words: readonly string[];
  readonly file: string;
  /** A case that takes longer, ms on the clock, is ended, told, and passed over. */
  readonly limitMs: number;
  /** Words for Node itself; those of this process unless told. */
  readonly flags?: readonly string[];
}

/** How often the number of the case that runs is looked at, as a share of the limit. */
const LOOKS = 10;
/** A process that ends before its first case twice in a row has another fault than a case. */
const MOST_FALSE_STARTS = 2;

/**
 * Runs cases in a process of their own until all are done. A case that has no end, or takes the process with it, is a
 * fault; the run goes on behind it in a new process.
 */
export async function watchRun({
  script,
  words,
  file,
  limitMs,
  flags = process.execArgv,
}: WatchedRun): Promise<void> {
  let falseStarts = 0;
  for (;;) {
    const child = fork(script, words, { execArgv: [...flags] });
    const stop = (): void => void child.kill("SIGKILL");
    const ended = once(child, "exit");
    process.once("exit", stop);
    let last: number | null = null;
    let since = performance.now();
    let isHung = false;
    const look = setInterval(() => {
      const now = caseNow(file);
      if (now !== last) [last, since] = [now, performance.now()];
      if (now === null || performance.now() - since < limitMs) return;
      isHung = true;
      stop();
    }, limitMs / LOOKS);
    const [code, signal] = await ended;
    clearInterval(look);
    process.off("exit", stop);
    const at = caseNow(file);
    if (code === 0 && at === null) return;
    const place = readPlace(file);
    if (place === null || (at === null && ++falseStarts === MOST_FALSE_STARTS))
      throw new Error(`the process for the cases ended by itself (${code ?? signal})`);
    if (at === null) continue;
    falseStarts = 0;
    const what = isHung ? `no end within ${limitMs / 1000} s` : `took the process with it (${code ?? signal})`;
    console.log(`  case ${at}: ${what}`);
    writePlace(file, passedOver(place, at, what));
  }
}

import { closeSync, openSync, readSync, writeSync } from "node:fs";
import { type Kind, runCases } from "./kind.ts";
import { readPlace, together, writePlace } from "./place.ts";

/** Where the number of the case stands that runs now, one more than it, as the process around can read it. */
const nowFile = (file: string): string => `${file}.now`;

/** The case that runs now in a process that keeps its place in `file`; null between cases. */
export function caseNow(file: string): number | null {
  const word = Buffer.alloc(4);
  try {
    const open = openSync(nowFile(file), "r");
    const count = readSync(open, word, 0, 4, 0);
    closeSync(open);
    const now = count === 4 ? word.readUInt32LE() : 0;
    return now === 0 ? null : now - 1;
  } catch {
    return null;
  }
}

/** Runs a kind's cases from the place in `file` on to its end and keeps the place there; tells every fault at once. */
export async function runRange(kind: Kind, file: string): Promise<void> {
  const before = readPlace(file);
  if (before === null) throw new Error(`no place in ${file}`);
  const word = Buffer.alloc(4);
  // Every case writes its number: a run that is ended by force, from within or without, still says in which.
  const now = openSync(nowFile(file), "w");
  const say = (number: number): void => {
    word.writeUInt32LE(number);
    writeSync(now, word, 0, 4, 0);
  };
  const tally = await runCases(kind, before.seed, before.next, before.to, {
    told: (next, sofar, fault) => {
      writePlace(file, together(before, next, sofar));
      if (fault !== undefined) console.log(`  case ${next - 1}: ${fault}`);
    },
    begun: (index) => say(index + 1),
    passed: new Set(before.passed),
  });
  say(0);
  await kind.end?.();
  writePlace(file, together(before, before.to, tally));
  closeSync(now);
}

// `npm run harden -- [KIND…] [--count N] [--from N] [--seed S]`: many hostile cases of each kind, case by case in a
// process of their own. A run that is stopped goes on where it was (out/harden keeps the place); `--fresh` begins anew;
// `--from` goes on where a run on another machine ended. Prints seed, counts, slow cases and every fault.
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { build } from "vite";
import type { Kind } from "./kind.ts";
import { KINDS } from "./kinds.ts";
import { freshPlace, type Place, readPlace, writePlace } from "./place.ts";
import { watchRun } from "./watchRun.ts";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: "string", default: "1000" },
    from: { type: "string", default: "0" },
    seed: { type: "string" },
    fresh: { type: "boolean", default: false },
  },
});
const names = Object.keys(KINDS);
const unknown = positionals.filter((word) => !names.includes(word));
if (unknown.length > 0) throw new Error(`no kind ${unknown.join(", ")}: one of ${names.join(", ")}`);
const from = Number(values.from);
const to = from + Number(values.count);
if (!(Number.isInteger(from) && from >= 0 && Number.isInteger(to) && to > from))
  throw new Error("--from and --count are whole numbers, --count at least 1");
const folder = fileURLToPath(new URL("../../out/harden/", import.meta.url));
mkdirSync(folder, { recursive: true });

/** Of its own for each first case, so that two ranges can be run side by side. */
const fileOf = ({ name }: Kind): string => join(folder, from === 0 ? `${name}.json` : `${name}-${from}.json`);

/** Where to begin: where the last run over this range of this seed stopped, with another end maybe. */
function placeOf(kind: Kind): Place {
  const fresh = freshPlace(Number(values.seed ?? Math.floor(Math.random() * 2 ** 31)), from, to);
  const kept = values.fresh ? null : readPlace(fileOf(kind));
  if (kept === null || kept.from !== from || kept.next >= to) return fresh;
  return values.seed === undefined || Number(values.seed) === kept.seed ? { ...kept, to } : fresh;
}

function tell({ next, outcomes, faults, slow, slowest, seconds, megabytes }: Place): void {
  const times = Object.entries(outcomes).sort(([, a], [, b]) => b - a);
  for (const [outcome, count] of times) console.log(`  ${outcome}: ${count}`);
  const each = ((seconds * 1000) / Math.max(1, next - from)).toFixed(2);
  console.log(`  cases ${from} to ${next - 1}, faults: ${faults.length}`);
  if (faults.length > 0) console.log(`  faults in ${faults.map(({ index }) => index).join(", ")}`);
  if (slow.length > 0) console.log(`  slow: ${slow.map(({ index, what }) => `${index} (${what})`).join(", ")}`);
  console.log(`  ${seconds.toFixed(0)} s of processor time in the tool itself, ${each} ms a case, ${megabytes} MB`);
  console.log(`  slowest ${slowest.ms.toFixed(0)} ms (case ${slowest.index})`);
}

/** The cases compiled, two folders below the root as the sources are: they run a fifth faster than with names kept. */
const compiled = fileURLToPath(new URL(`../../out/cases-${process.pid}/`, import.meta.url));
process.once("exit", () => rmSync(compiled, { recursive: true, force: true }));
await build({
  configFile: false,
  logLevel: "error",
  build: {
    ssr: true,
    outDir: compiled,
    target: "node20",
    rolldownOptions: {
      // The thread that reads patterns is started from a file of its own.
      input: ["./caseRunner.ts", "../../src/reading/nodeReadingEntry.ts"].map((path) =>
        fileURLToPath(new URL(path, import.meta.url)),
      ),
      output: { entryFileNames: "[name].js", chunkFileNames: "[name]-[hash].js" },
    },
  },
});

for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => process.exit(130));
let faults = 0;
for (const name of positionals.length === 0 ? names : positionals) {
  const kind = await KINDS[name]!();
  const place = placeOf(kind);
  const file = fileOf(kind);
  console.log(`${kind.name}: ${kind.about}\n  seed ${place.seed}, cases ${place.next} to ${to - 1}`);
  writePlace(file, place);
  await watchRun({
    script: join(compiled, "caseRunner.js"),
    flags: [],
    words: [kind.name, file],
    file,
    limitMs: kind.limitMs,
  });
  const done = readPlace(file)!;
  tell(done);
  faults += done.faults.length;
}
process.exitCode = faults > 0 ? 1 : 0;

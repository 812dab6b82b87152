// `npm run harden -- [KIND…] [--count N] [--seed S]`: many hostile cases of each kind. A run that is stopped goes on
// where it was (out/harden keeps the place); `--fresh` begins anew. Prints seed, counts, the slowest case and every fault.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import { BUILT, batchKillsOf } from "./batchKills.ts";
import { commandLines } from "./commandLines.ts";
import { BUILT_MODULES, cupboardKillsOf } from "./cupboardKills.ts";
import { hostileFiles } from "./hostileFiles.ts";
import { intoKillsOf, killsOf } from "./kills.ts";
import { type Kind, runCases, type Tally } from "./kind.ts";
import { pageKills } from "./pageKills.ts";
import { patternFiles } from "./patternFiles.ts";
import { smallProjects } from "./smallProjects.ts";

const KINDS: readonly Kind[] = [
  hostileFiles,
  commandLines,
  patternFiles,
  smallProjects,
  killsOf(BUILT),
  intoKillsOf(BUILT),
  batchKillsOf(BUILT, 2),
  cupboardKillsOf(BUILT_MODULES),
  pageKills(),
];
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: "string", default: "1000" },
    seed: { type: "string" },
    fresh: { type: "boolean", default: false },
  },
});
const count = Number(values.count);
const folder = fileURLToPath(new URL("../../out/harden/", import.meta.url));
mkdirSync(folder, { recursive: true });

/** Where a kind's last run stopped, and how it went until then. */
interface Place {
  readonly seed: number;
  readonly next: number;
  readonly outcomes: Readonly<Record<string, number>>;
  readonly faults: number;
  readonly slowest: { readonly ms: number; readonly index: number };
}

function placeOf(kind: Kind): Place {
  const seed = Number(values.seed ?? Math.floor(Math.random() * 2 ** 31));
  const fresh: Place = { seed, next: 0, outcomes: {}, faults: 0, slowest: { ms: 0, index: 0 } };
  if (values.fresh) return fresh;
  try {
    const kept: Place = { ...fresh, ...JSON.parse(readFileSync(join(folder, `${kind.name}.json`), "utf8")) };
    const isSame = values.seed === undefined || Number(values.seed) === kept.seed;
    return isSame && kept.next < count ? kept : fresh;
  } catch {
    return fresh;
  }
}

/** A run's tally added to what stood before it. */
function together(before: Place, next: number, { outcomes, faults, slowest }: Tally): Place {
  const all = new Map(Object.entries(before.outcomes));
  for (const [outcome, times] of outcomes) all.set(outcome, (all.get(outcome) ?? 0) + times);
  return {
    seed: before.seed,
    next,
    outcomes: Object.fromEntries(all),
    faults: before.faults + faults.length,
    slowest: slowest.ms > before.slowest.ms ? slowest : before.slowest,
  };
}

/** The case that runs now, counted from 1; a thread of its own tells the number of one that has no end. */
const running = new Int32Array(new SharedArrayBuffer(4));
const NO_END_MS = 300_000;
const watch = new Worker(
  `const { workerData: cases } = require("node:worker_threads");
  let last = 0;
  setInterval(() => {
    if (cases[0] !== 0 && cases[0] === last) require("node:fs").writeSync(2, \`  case \${last - 1} has no end yet\n\`);
    last = cases[0];
  }, ${NO_END_MS});`,
  { eval: true, workerData: running },
);
watch.unref();

let faults = 0;
for (const kind of KINDS.filter(({ name }) => positionals.length === 0 || positionals.includes(name))) {
  const before = placeOf(kind);
  const file = join(folder, `${kind.name}.json`);
  const keep = (place: Place): void => writeFileSync(file, JSON.stringify(place));
  console.log(`${kind.name}: ${kind.about}\n  seed ${before.seed}, cases ${before.next} to ${count - 1}`);
  keep(before);
  const tally = await runCases(
    kind,
    before.seed,
    before.next,
    count,
    (next, sofar, fault) => {
      keep(together(before, next, sofar));
      // At once, so that a run that is stopped has told what it found.
      if (fault !== undefined) console.log(`  case ${next - 1}: ${fault}`);
    },
    (index) => Atomics.store(running, 0, index + 1),
  );
  Atomics.store(running, 0, 0);
  await kind.end?.();
  const place = together(before, count, tally);
  keep(place);
  faults += place.faults;
  for (const [outcome, times] of Object.entries(place.outcomes)) console.log(`  ${outcome}: ${times}`);
  const { ms, index } = place.slowest;
  console.log(`  faults: ${place.faults}; slowest ${ms.toFixed(0)} ms of processor time (case ${index})`);
}
console.log(`Largest memory: ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);
process.exitCode = faults > 0 ? 1 : 0;

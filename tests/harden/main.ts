// `npm run harden -- [KIND…] [--count N] [--seed S]`: many hostile cases of each kind. A run that is stopped goes on
// where it was (out/harden keeps the place); `--fresh` begins anew. Prints seed, counts, the slowest case and every fault.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { BUILT, batchKillsOf } from "./batchKills.ts";
import { commandLines } from "./commandLines.ts";
import { BUILT_MODULES, cupboardKillsOf } from "./cupboardKills.ts";
import { hostileFiles } from "./hostileFiles.ts";
import { kills } from "./kills.ts";
import { type Kind, runCases } from "./kind.ts";
import { smallProjects } from "./smallProjects.ts";

const KINDS: readonly Kind[] = [
  hostileFiles,
  commandLines,
  smallProjects,
  kills,
  batchKillsOf(BUILT, 2),
  cupboardKillsOf(BUILT_MODULES),
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

/** Where a kind's last run stopped. */
interface Place {
  readonly seed: number;
  readonly next: number;
}

function placeOf(kind: Kind): Place {
  const fresh = { seed: Number(values.seed ?? Math.floor(Math.random() * 2 ** 31)), next: 0 };
  if (values.fresh) return fresh;
  try {
    const kept: Place = JSON.parse(readFileSync(join(folder, `${kind.name}.json`), "utf8"));
    const isSame = values.seed === undefined || Number(values.seed) === kept.seed;
    return isSame && kept.next < count ? kept : fresh;
  } catch {
    return fresh;
  }
}

let faults = 0;
for (const kind of KINDS.filter(({ name }) => positionals.length === 0 || positionals.includes(name))) {
  const { seed, next } = placeOf(kind);
  const keep = (at: number): void =>
    writeFileSync(join(folder, `${kind.name}.json`), JSON.stringify({ seed, next: at }));
  console.log(`${kind.name}: ${kind.about}\n  seed ${seed}, cases ${next} to ${count - 1}`);
  const tally = await runCases(kind, seed, next, count, (at, fault) => {
    keep(at);
    // At once, so that a run that is stopped has told what it found.
    if (fault !== undefined) console.log(`  case ${at - 1}: ${fault}`);
  });
  keep(count);
  faults += tally.faults.length;
  for (const [outcome, times] of tally.outcomes) console.log(`  ${outcome}: ${times}`);
  console.log(
    `  faults: ${tally.faults.length}; slowest ${tally.slowest.ms.toFixed(0)} ms of processor time (case ${tally.slowest.index})`,
  );
}
console.log(`Largest memory: ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);
process.exitCode = faults > 0 ? 1 : 0;

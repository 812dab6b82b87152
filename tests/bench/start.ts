// `npm run bench:start -- [runs]`: what it costs to start the built program, processor time of the whole process (user
// and system, all its threads) as it ends: the least and the median of so many runs, each command in turn so that a
// busy minute meets them all. Ends with 1 when a promised command takes longer than promised even at its best.

import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** Most processor time that starting may take at its best, s. */
const PROMISED = 0.4;

const STRAP = ["--construction", "fourfold", "--width", "1 1/4 in", "--length", "60 in", "--thickness", "1 mm"];
const COMMANDS: readonly { readonly words: readonly string[]; readonly promised: boolean }[] = [
  { words: ["--help"], promised: true },
  { words: ["--version"], promised: true },
  { words: ["strap", ...STRAP], promised: true },
  { words: ["strap", "--help"], promised: false },
  { words: ["yield", "--strip", "10 cm x 70 cm", "--width", "107 cm", "--length", "1 m"], promised: false },
  {
    words: ["bag", "--body", "boxed", "--width", "30 cm", "--height", "25 cm", "--depth", "10 cm"],
    promised: false,
  },
  { words: ["check", "fixtures/harbour-bags.json"], promised: false },
  { words: ["lay", "--help"], promised: false },
  { words: ["pattern", "--help"], promised: false },
];

const root = fileURLToPath(new URL("../../", import.meta.url));
/** Runs before the program and tells on a stream of its own, as the process ends, what it took. */
const TELLS = `data:text/javascript,${encodeURIComponent(
  'import { writeSync } from "node:fs"; process.on("exit", () => { const { user, system } = process.cpuUsage(); writeSync(3, String(user + system)); });',
)}`;

function processorSeconds(words: readonly string[]): number {
  const { status, output, stderr } = spawnSync(
    process.execPath,
    ["--import", TELLS, "dist/cli/main.js", ...words],
    { cwd: root, stdio: ["ignore", "pipe", "pipe", "pipe"], encoding: "utf8" },
  );
  const micros = Number(output[3]);
  if (status !== 0 || !(micros > 0)) throw new Error(`${words.join(" ")} ended with ${status}: ${stderr}`);
  return micros / 1e6;
}

const runs = Number(process.argv[2] ?? 7);
const taken = COMMANDS.map((): number[] => []);
for (let run = 0; run < runs; run++)
  for (const [at, { words }] of COMMANDS.entries()) taken[at]!.push(processorSeconds(words));

for (const [at, { words, promised }] of COMMANDS.entries()) {
  const sorted = taken[at]!.sort((a, b) => a - b);
  const [least, median] = [sorted[0]!, sorted[sorted.length >> 1]!];
  const late = promised && least > PROMISED;
  if (late) process.exitCode = 1;
  const note = late ? `  more than ${PROMISED} s` : "";
  const [name, first = ""] = words;
  console.log(
    `${`${name} ${first}`.padEnd(34)}least ${least.toFixed(2)} s  median ${median.toFixed(2)} s of ${runs}${note}`,
  );
}

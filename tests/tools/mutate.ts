// `npm run mutate -- FOLDER [--sample N] [--seed S] [--tests PATH]`: changes the sources of a folder one place at a time
// and runs the tests that reach the place; a change that no test notices is printed. Nothing is written: the sources
// are handed to the test runner with all drawn changes in them, each behind a switch (`mutants.ts`), and each test is
// run once more for every change it reaches (`mutantRunner.ts`). Prints the score, the part of the changes that were
// noticed, and apart from it what was passed over, and what was read by hand and found to be no change at all.
import { once } from "node:events";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { parseArgs } from "node:util";
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { readAsEqual } from "./equalMutants.ts";
import { importedBy, type Mutant, mutantsOf, reachOf } from "./mutants.ts";
import { carryOut, type Order, type Tally, type TestFile, tryOut } from "./mutantTurns.ts";

/** Steps from a test elsewhere to the folder that is changed: those that use one of its sources themselves. */
const STEPS = 1;
function sourcesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, name))
    .filter((name) => /(?<!\.test)\.ts$/u.test(name) && !name.endsWith(".d.ts"))
    .sort();
}

/** Tests that bring in sources of the folder, those beside them before all others, those of few before those of many. */
function testsOf(folder: string, steps: number): TestFile[] {
  const known = new Map<string, string[]>();
  const importsOf = (file: string): string[] => {
    const names =
      known.get(file) ?? (existsSync(file) && /\.tsx?$/u.test(file) ? importedBy(readFileSync(file, "utf8")) : []);
    const files = names.map((name) => (name.startsWith(".") ? normalize(join(dirname(file), name)) : name));
    known.set(file, files);
    return files;
  };
  const roots = ["src/core", "src/export", "tests/property", "tests/golden", "tests/outside"];
  const tests = roots.flatMap((root) =>
    readdirSync(root, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".test.ts"))
      .map((name) => join(root, name)),
  );
  return tests
    .map((test) => {
      const isBeside = test.startsWith(`${folder}/`);
      const reach = [...reachOf(test, importsOf)].filter(
        ([file]) => file.startsWith(`${folder}/`) && file !== test,
      );
      const isUser = isBeside || reach.some(([, step]) => step <= steps);
      const files = isUser ? reach.map(([file]) => file) : [];
      const own = reach.filter(([, step]) => step === 1).map(([file]) => file);
      return { test, files, own, isBeside };
    })
    .filter(({ files }) => files.length > 0)
    .sort((a, b) => Number(b.isBeside) - Number(a.isBeside) || a.files.length - b.files.length);
}

function said({ file, start, end, text }: Mutant): string {
  const code = readFileSync(file, "utf8");
  const line = code.slice(0, start).split("\n").length;
  return `${file}:${line} ${code.split("\n")[line - 1]!.trim()}   ${code.slice(start, end)} → ${text}`;
}

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      ordered: { type: "boolean" },
      sample: { type: "string" },
      seed: { type: "string", default: "1" },
      steps: { type: "string", default: String(STEPS) },
      tests: { type: "string", multiple: true },
    },
  });
  if (values.ordered) {
    const [order] = (await once(process, "message")) as [Order];
    await carryOut(order, (news) => process.send!(news));
    process.send!("end", undefined, {}, () => process.exit(0));
    return;
  }
  const folder = normalize(positionals[0] ?? "src/core/lay/check").replace(/[\\/]$/u, "");
  const made = sourcesIn(folder).flatMap((file) => mutantsOf(file, readFileSync(file, "utf8")));
  const all = made.filter(({ passedOver }) => passedOver === null);
  const rng = seededRng(Number(values.seed));
  const drawn = all.map((mutant, n) => ({ mutant, n, at: rng.below(2 ** 30) })).sort((a, b) => a.at - b.at);
  const chosen = new Map(drawn.slice(0, Number(values.sample ?? all.length)).map(({ mutant, n }) => [n, mutant]));
  const files = sourcesIn(folder);
  const tests = values.tests?.map((test) => ({ test, files, own: files })) ?? testsOf(folder, Number(values.steps));
  const tally = await tryOut(chosen, tests);
  report(
    folder,
    chosen,
    tally,
    `${all.length} places, seed ${values.seed}, ${tests.length} test files`,
    made.length - all.length,
  );
}

function report(
  folder: string,
  chosen: ReadonlyMap<number, Mutant>,
  tally: Tally,
  of: string,
  passedOver: number,
): void {
  const { noticed, reached, endless, unused } = tally;
  const equal: number[] = [];
  for (const [n, mutant] of [...chosen].sort((a, b) => a[0] - b[0])) {
    if (noticed.has(n)) continue;
    if (readAsEqual(mutant, readFileSync(mutant.file, "utf8"))) equal.push(n);
    else console.log(`${reached.has(n) ? "lives" : "reached by no test"}: ${said(mutant)}`);
  }
  for (const one of unused) console.log(`not run for each change: ${one}`);
  const part = (whole: number): string =>
    `${noticed.size} of ${whole}, ${((100 * noticed.size) / whole).toFixed(1)} %`;
  console.log(`${folder}: noticed ${part(chosen.size)} (of ${of}; ${endless.size} by having no end)`);
  console.log(
    `${equal.length} read by hand can be noticed by nobody; without these ${part(chosen.size - equal.length)}`,
  );
  console.log(`${passedOver} passed over: conditions that guard a throw of our own`);
}

if (process.argv[1]?.endsWith("mutate.ts")) await main();

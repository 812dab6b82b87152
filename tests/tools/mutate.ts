// `npm run mutate -- FOLDER [--sample N] [--seed S]`: changes the sources of a folder one place at a time and runs the
// tests beside them; a change that no test notices is printed. Nothing is written: a changed file is handed to the test
// runner in place of the one on the disk. Prints the score, the part of the changes that were noticed.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import ts from "typescript";
import { createVitest } from "vitest/node";
import { seededRng } from "../../src/core/lay/search/rng.ts";

/** A change of one place. */
export interface Mutant {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const SWAPS: Readonly<Record<string, string>> = {
  "<": "<=",
  "<=": "<",
  ">": ">=",
  ">=": ">",
  "===": "!==",
  "!==": "===",
  "&&": "||",
  "||": "&&",
  "+": "-",
  "-": "+",
  "*": "/",
  "/": "*",
};

/** Every change of a source: operators swapped, conditions turned over, numbers moved by one, what is left out. */
export function mutantsOf(file: string, code: string): Mutant[] {
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true);
  const found: Mutant[] = [];
  const put = (node: ts.Node, text: string): void => {
    found.push({ file, start: node.getStart(source), end: node.getEnd(), text });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) {
      const swap = SWAPS[node.operatorToken.getText(source)];
      const isText = [node.left, node.right].some(
        (side) => ts.isStringLiteralLike(side) || ts.isTemplateExpression(side),
      );
      if (swap !== undefined && !isText) put(node.operatorToken, swap);
    }
    if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.ExclamationToken)
      put(node, node.operand.getText(source));
    if (ts.isIfStatement(node)) {
      put(node.expression, "true");
      put(node.expression, "false");
    }
    if (ts.isNumericLiteral(node)) put(node, String(Number(node.text) + 1));
    if (node.kind === ts.SyntaxKind.TrueKeyword) put(node, "false");
    if (node.kind === ts.SyntaxKind.FalseKeyword) put(node, "true");
    if (ts.isExpressionStatement(node) && ts.isCallExpression(node.expression)) put(node, ";");
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** A file with a mutant's change in it. */
export function changed(code: string, { start, end, text }: Mutant): string {
  return code.slice(0, start) + text + code.slice(end);
}

/** Runs tests again and again, each time with another change; tells the outcomes as they come. */
async function tryOut(
  mutants: readonly (Mutant | null)[],
  tests: readonly string[],
  tell: (isNoticed: boolean) => void,
): Promise<void> {
  let current: Mutant | null = null;
  const vitest = await createVitest(
    "test",
    {
      // The house's file of settings has projects, which would not hear of the plugin below.
      config: false,
      include: tests.map((path) => (path.endsWith(".ts") ? path : `${path}/**/*.test.ts`)),
      setupFiles: ["tests/tools/fuzzSeed.ts"],
      // Threads end with their process, also when a change made a loop that has no end.
      pool: "threads",
      maxWorkers: 1,
      watch: false,
      bail: 1,
      reporters: [{}],
      testTimeout: 20_000,
    },
    {
      plugins: [
        {
          name: "mutant",
          enforce: "pre",
          load: (id) =>
            current !== null && id.split("?")[0] === resolve(current.file)
              ? changed(readFileSync(current.file, "utf8"), current)
              : null,
        },
      ],
    },
  );
  for (const mutant of mutants) {
    for (const { file } of [current, mutant].filter((one) => one !== null)) vitest.invalidateFile(resolve(file));
    current = mutant;
    vitest.state.clearErrors();
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
      await vitest.globTestSpecifications(),
      true,
    );
    // A run that does not load has noticed.
    const isGood = testModules.length > 0 && testModules.every((module) => module.ok());
    tell(!isGood || unhandledErrors.length > 0);
  }
  await vitest.close();
}

/** Longest run of the tests, ms; a change that makes them run on has been noticed. */
const LONGEST = 180_000;

/**
 * Outcomes of all changes in their order, by processes of their own: a change can make a loop that has no end, and
 * only the end of its process ends that. The next process goes on behind it.
 */
async function tryAll(count: number, tell: (index: number, isNoticed: boolean) => void): Promise<void> {
  // The first is no change at all.
  for (let next = -1; next < count; ) {
    const words = ["--import", "tsx", ...process.argv.slice(1), `--from=${next}`];
    const child = spawn(process.execPath, words, { stdio: ["ignore", "ignore", "ignore", "ipc"] });
    let timer = setTimeout(() => child.kill("SIGKILL"), LONGEST);
    child.on("message", (isNoticed: boolean) => {
      clearTimeout(timer);
      timer = setTimeout(() => child.kill("SIGKILL"), LONGEST);
      tell(next++, isNoticed);
    });
    await once(child, "exit");
    clearTimeout(timer);
    if (next < count) tell(next++, true);
  }
}

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      from: { type: "string" },
      sample: { type: "string" },
      seed: { type: "string", default: "1" },
      tests: { type: "string", multiple: true },
    },
  });
  const folder = positionals[0] ?? "src/core/lay/check";
  const tests = [folder, ...(values.tests ?? [])];
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, name))
    .filter((name) => /(?<!\.test)\.ts$/u.test(name) && !name.endsWith(".d.ts"))
    .sort();
  const all = files.flatMap((file) => mutantsOf(file, readFileSync(file, "utf8")));
  const rng = seededRng(Number(values.seed));
  const drawn = all.map((mutant) => ({ mutant, at: rng.below(2 ** 30) })).sort((a, b) => a.at - b.at);
  const chosen = drawn.slice(0, Number(values.sample ?? all.length)).map(({ mutant }) => mutant);
  if (values.from !== undefined) {
    const from = Number(values.from);
    const left = from < 0 ? [null, ...chosen] : chosen.slice(from);
    await tryOut(left, tests, (isNoticed) => process.send!(isNoticed));
    // Threads of changes that never end would hold it.
    process.exit(0);
  }
  let noticed = 0;
  await tryAll(chosen.length, (i, isNoticed) => {
    if (i < 0 && isNoticed) throw new Error("the tests fail, or take too long, without any change");
    if (i < 0) return;
    const mutant = chosen[i]!;
    if (isNoticed) noticed++;
    else {
      const code = readFileSync(mutant.file, "utf8");
      const line = code.slice(0, mutant.start).split("\n").length;
      console.log(`lives: ${mutant.file}:${line} ${code.slice(mutant.start, mutant.end)} → ${mutant.text}`);
    }
    if ((i + 1) % 10 === 0) console.log(`${i + 1} of ${chosen.length}, ${noticed} noticed`);
  });
  console.log(
    `${folder}: ${noticed} of ${chosen.length} noticed, ${((100 * noticed) / chosen.length).toFixed(1)} % (of ${all.length}, seed ${values.seed})`,
  );
}

if (process.argv[1]?.endsWith("mutate.ts")) await main();

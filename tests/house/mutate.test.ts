import { execFile } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, test } from "vitest";
import { EQUAL, readAsEqual } from "../tools/equalMutants.ts";
import { changed, importedBy, mutantsOf, reachOf, withSwitches } from "../tools/mutants.ts";

const made = (code: string): string[] => mutantsOf("a.ts", code).map((mutant) => changed(code, mutant));

test("operators are swapped, conditions forced, numbers moved, calls left out: one place at a time", () => {
  expect(made("const a = b < 2;")).toEqual(["const a = b <= 2;", "const a = b < 3;"]);
  expect(made("if (!a) go();")).toEqual(["if (true) go();", "if (false) go();", "if (a) go();", "if (!a) ;"]);
  expect(made("return x - y === z;")).toEqual(["return x - y !== z;", "return x + y === z;"]);
});

test("types, imports, texts that are put together and what our own mistakes say stay", () => {
  expect(made('import a from "b"; type C = 1 | 2; const d = "e" + f;')).toEqual([]);
  expect(made("const a = { 1: b }; throw new Error(c + 1);")).toEqual([]);
});

test("that a guard of a throw never holds is passed over, that it always does is not", () => {
  const passed = (code: string) => mutantsOf("a.ts", code).filter(({ passedOver }) => passedOver !== null);
  expect(passed("if (a) throw b;").map(({ text }) => text)).toEqual(["false"]);
  expect(passed("if (a) { throw b; }")).toHaveLength(1);
  expect(passed("if (a) { b(); throw c; } if (d) return 1;")).toEqual([]);
});

test("with a change's switch on a source does what it does with that change alone, with none what it always did", () => {
  const code = `
    let calls = 0;
    const note = (by) => { calls += by; };
    const all = [];
    for (const a of given) for (let b = 0; b < 3; b++) if (!(a > b && b !== 1) || a === 4) note(a * 2 - b);
    let left = 5;
    while (left > 0) left -= 2;
    do { all.push(calls / 2, -left); } while (all.length < 4);
    if (calls < 10) { note(1); all.push(true); } else all.push(calls + 1 < 30 ? false : given[0] - 1);
    return [calls, ...all];`;
  const mutants = mutantsOf("a.ts", code);
  expect(mutants.length).toBeGreaterThan(40);
  const given = [0, 1, 4];
  const run = (source: string, on: number): { told: unknown; reached: Set<number> } => {
    const reached = new Set<number>();
    let rounds = 0;
    const round = (): void => {
      if (++rounds > 1000) throw new Error("no end");
    };
    const change = (n: number): boolean => reached.add(n) && n === on;
    const kept = (make: () => unknown): unknown => make();
    try {
      const told = new Function("given", "__change", "__round", "__kept", source)(given, change, round, kept);
      return { told, reached };
    } catch (error) {
      return { told: String(error), reached };
    }
  };
  const switched = withSwitches(code, new Map(mutants.entries()));
  const plain = run(switched, -1);
  expect(plain.told).toEqual(new Function("given", code)(given));
  expect(plain.reached.size).toBeGreaterThan(35);
  let differ = 0;
  for (const [n, mutant] of mutants.entries()) {
    const { told } = run(switched, n);
    expect(told, made(code)[n]).toEqual(run(withSwitches(changed(code, mutant), new Map()), -1).told);
    if (JSON.stringify(told) !== JSON.stringify(plain.told)) differ++;
  }
  expect(differ).toBeGreaterThan(25);
});

test("what a module names while it loads is worked out again with a switch on, functions apart", () => {
  const code = "const a = 2; const b = { twice: 2 * a }; const c = (by) => by + b.twice; return () => c(1);";
  const again: (() => void)[] = [];
  const kept = (make: () => unknown, put: (value: unknown) => void): unknown => {
    again.push(() => put(make()));
    return make();
  };
  let on = -1;
  const switched = withSwitches(code, new Map(mutantsOf("a.ts", code).entries()));
  const told = new Function("__change", "__kept", switched)((n: number) => n === on, kept) as () => number;
  const results = [-1, 0, 1, 2, 3, 4, 5, -1].map((n) => {
    on = n;
    for (const one of again) one();
    return told();
  });
  // In order: a by one more, × as /, 2 by one more, + as −, 1 by one more; there are no more.
  expect(results).toEqual([5, 7, 2, 7, -3, 6, 5, 5]);
});

test("what a test brings in is found step by step, types left out", () => {
  const code =
    'import a from "./a.ts"; import type { b } from "./b.ts"; export { c } from "./c.ts"; export type { d } from "./d.ts";';
  expect(importedBy(code)).toEqual(["./a.ts", "./c.ts"]);
  const imports: Record<string, string[]> = { t: ["a", "b"], a: ["c"], b: ["a"], c: ["t"] };
  expect([...reachOf("t", (file) => imports[file]!)]).toEqual([
    ["t", 0],
    ["a", 1],
    ["b", 1],
    ["c", 2],
  ]);
});

test("every change that was read by hand is one that the tool makes, in a file that is there", () => {
  expect(EQUAL.length).toBeGreaterThan(30);
  for (const { file, line, changes } of EQUAL) {
    const path = join("src/core", file);
    const code = readFileSync(path, "utf8");
    const all = mutantsOf(path, code).filter((mutant) => readAsEqual(mutant, code) !== undefined);
    const found = all.map(({ start, end, text }) => [
      code.slice(code.lastIndexOf("\n", start) + 1, code.indexOf("\n", start)),
      `${code.slice(start, end)} → ${text}`,
    ]);
    for (const change of changes)
      expect(
        found.some(([at, made]) => at!.includes(line) && made === change),
        `${path}: ${line}: ${change}`,
      ).toBe(true);
  }
});

test("a weak test is found: changes that it lets live are printed, those it notices are not", async () => {
  mkdirSync("out", { recursive: true });
  const folder = mkdtempSync(join("out", "weak-"));
  try {
    writeFileSync(
      join(folder, "fee.ts"),
      `import { RATES } from "./rates.ts";
export function fee(pieces: number): number {
  if (pieces < 0) return 0;
  let sum = 0;
  for (let i = 0; i < pieces; i++) sum += RATES.each;
  return sum > RATES.most ? RATES.most : sum;
}
`,
    );
    writeFileSync(
      join(folder, "rates.ts"),
      "const [MOST] = [7];\nexport const RATES = { most: MOST, each: 2, least: 3 };\n",
    );
    writeFileSync(
      join(folder, "fee.test.ts"),
      `import { expect, test } from "vitest";
import { fee } from "./fee.ts";

test("a fee for each piece", () => {
  expect([fee(0), fee(3), fee(5)]).toEqual([0, 6, 7]);
});
`,
    );
    const words = ["--import", "tsx", "tests/tools/mutate.ts", folder, "--tests", join(folder, "fee.test.ts")];
    const { stdout } = await promisify(execFile)(process.execPath, words);
    const lives = stdout
      .split("\n")
      .flatMap(
        (line) => /^(lives|reached by no test): \S+:(\d+) .* {3}(.*)$/u.exec(line)?.slice(2).join(" ") ?? [],
      );
    // The test asks for no fewer than no pieces, nor for what comes to 7 by itself, nor for the least.
    expect(lives).toEqual(["3 pieces < 0 → false", "3 < → <=", "3 0 → 1", "3 0 → 1", "6 > → >=", "2 3 → 4"]);
    const [, noticed, all] = /noticed (\d+) of (\d+),/u.exec(stdout)!;
    expect([Number(all) - Number(noticed), Number(noticed) >= 5]).toEqual([6, true]);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

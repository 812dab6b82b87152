// `npm test` says what it ran: the runner is run on small suites, and its verdict is held against what is in them.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { verdictOf } from "../tools/verdict.ts";

const folder = mkdtempSync(join(fileURLToPath(new URL(".", import.meta.url)), "suite-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const vitest = fileURLToPath(new URL("../../node_modules/vitest/vitest.mjs", import.meta.url));

/** vitest's own report on one test file and its exit code. */
function reportOn(name: string, body: string): { code: number; report: Parameters<typeof verdictOf>[1] } {
  const file = join(folder, `${name}.check.ts`);
  const out = join(folder, `${name}.json`);
  writeFileSync(file, `import { expect, test } from "vitest";\n${body}`);
  const config = join(folder, `${name}.config.ts`);
  writeFileSync(
    config,
    `export default { test: { include: [${JSON.stringify(file)}], root: ${JSON.stringify(folder)} } };\n`,
  );
  let code = 0;
  try {
    execFileSync(process.execPath, [vitest, "run", "--config", config, "--reporter=json", `--outputFile=${out}`], {
      stdio: "ignore",
      cwd: folder,
    });
  } catch (error) {
    code = (error as { status: number }).status;
  }
  return { code, report: JSON.parse(readFileSync(out, "utf8")) };
}

const GOOD = 'test("adds", () => expect(1 + 1).toBe(2));\n';

/** A test in the text of a made-up suite, marked by a word of the runner that keeps it, or all others, from running. */
const marked = (word: string, rest: string): string => `test.${word}(${rest});\n`;

// The suites below are texts, written to a file and run by the runner under test, which has to report what each of
// them switches off: nothing of this file is switched off.
test.each([
  ["good", GOOD, 0, "1 passed, 0 failed"],
  ["skipped", GOOD + marked("skip", '"later", () => {}'), 1, "Not run: later"],
  ["todo", GOOD + marked("todo", '"some day"'), 1, "Not run: some day"],
  ["skippedInside", `${GOOD}test("gives up", (c) => c.skip());\n`, 1, "Not run: gives up"],
  [
    "only",
    `${marked("only", '"one", () => expect(1).toBe(1)')}test("two", () => expect(1).toBe(1));\n`,
    1,
    "Not run: two",
  ],
  ["wrong", `${GOOD}test("errs", () => expect(1).toBe(2));\n`, 1, "1 passed, 1 failed"],
  ["unreadable", "throw new Error();\n", 1, "0 passed, 1 failed"],
])("a suite that is %s", (name, body, status, line) => {
  const { code, report } = reportOn(name, body);
  const verdict = verdictOf(code, report);
  expect(verdict.status, verdict.lines.join("\n")).toBe(status);
  expect(verdict.lines).toContain(line);
});

test("no report, or none that passed, is a failure whatever the exit code says", () => {
  expect(verdictOf(0, null).status).toBe(1);
  expect(verdictOf(0, { testResults: [] }).status).toBe(1);
  expect(verdictOf(null, null).status).toBe(1);
});

test("tests that pass on the second try only are named, and are a failure when they are many", () => {
  const unsteady = (count: number): string =>
    Array.from(
      { length: count },
      (_, i) => `let n${i} = 0;\ntest("unsteady ${i}", { retry: 1 }, () => expect(++n${i}).toBe(2));\n`,
    ).join("");
  const few = reportOn("unsteady", GOOD + unsteady(1));
  const verdict = verdictOf(few.code, few.report);
  expect(verdict.status, verdict.lines.join("\n")).toBe(0);
  expect(verdict.lines[0]).toMatch(/^Passed on the second try only: unsteady 0 \(first: .*expected 1 to be 2/u);
  expect(verdict.lines).toContain("2 passed, 0 failed");
  const many = reportOn("oftenUnsteady", unsteady(4));
  expect(verdictOf(many.code, many.report).status).toBe(1);
});

// `**` gives other last bits in one version of V8 than in another (10 ** -4 is one), and a search that hangs on them
// finds other plans: in the core it stands between whole numbers alone.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { power } from "../../src/core/lay/search/rng.ts";

const CORE = new URL("../../src/core/", import.meta.url);
/** Squares, whole powers of two, of ten with digits counted in whole numbers, of `BigInt`, and one that is rounded down. */
const EXACT =
  /\*\* 2\b(?![.\d])|\b2n? \*\* (\w+\b(?!\()|Math\.(max|min|round)\()|\b10n? \*\* (BigInt\(|minorDigits\()|MOST_CHOICES \*\*/u;

function inexact(line: string): boolean {
  return line.includes(" ** ") && !/^\s*(\/?\*|\/\/)/u.test(line) && !EXACT.test(line);
}

test("no power of the core hangs on the version of the engine", () => {
  const files = readdirSync(CORE, { recursive: true, encoding: "utf8" }).filter(
    (name) => name.endsWith(".ts") && !name.endsWith(".test.ts"),
  );
  expect(files.length).toBeGreaterThan(300);
  const found = files.flatMap((name) =>
    readFileSync(new URL(name, CORE), "utf8")
      .split("\n")
      .filter(inexact)
      .map((line) => `${name}: ${line.trim()}`),
  );
  expect(found).toEqual([]);
});

test("what it must notice it notices, and what takes its place is right", () => {
  for (const line of ["a ** b;", "10 ** Math.floor(x)", "x ** 0.25", "2 ** (code / 8)", "5 ** 2.5", "x ** 3"])
    expect(inexact(line), line).toBe(true);
  for (const line of ["x ** 2;", "2 ** 31 - 1", "2n ** 53n", "2 ** Math.max(0, round)"])
    expect(inexact(line), line).toBe(false);
  for (const [base, exponent] of [
    [2, 0.25],
    [81, 0.75],
    [1e6, 1.05],
    [0.3, 2],
  ] as const)
    expect(power(base, exponent) / base ** exponent).toBeCloseTo(1, 13);
  expect(power(0.7, 0)).toBe(1);
});

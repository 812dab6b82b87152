import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { describeProblem } from "../../src/core/problems/describeProblem.ts";
import { MOST_CHARACTERS, readProject } from "../../src/core/project/file/readProject.ts";
import { writeProject } from "../../src/core/project/file/writeProject.ts";

const text = readFileSync(new URL("../../fixtures/harbour-bags.json", import.meta.url), "utf8");

/** Whatever comes in: a project, or problems that can be told. */
function judge(input: string): boolean {
  const result = readProject(input);
  if (result.ok) return true;
  expect(result.problems.length).toBeGreaterThan(0);
  for (const problem of result.problems) {
    const told = describeProblem(problem);
    expect(told.what.length).toBeGreaterThan(5);
    expect(told.remedy.length).toBeGreaterThan(5);
    expect(`${told.what}${told.remedy}`).not.toMatch(/undefined|\[object|NaN mm/u);
    expect(`${told.what}${told.remedy}`.length).toBeLessThan(900);
  }
  return false;
}

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

function places(value: Json, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== "object" || value === null) return [path];
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value);
  return [path, ...keys.flatMap((key) => places((value as Record<string | number, Json>)[key]!, [...path, key]))];
}

function withValue(path: (string | number)[], junk: unknown): string {
  if (path.length === 0) return JSON.stringify(junk) ?? "";
  const copy = JSON.parse(text);
  let parent = copy;
  for (const step of path.slice(0, -1)) parent = parent[step];
  parent[path.at(-1)!] = junk;
  return JSON.stringify(copy);
}

const allPlaces = places(JSON.parse(text));

test("one value replaced by anything: read, or told what is wrong; never thrown", () => {
  const junk = fc.oneof(
    fc.jsonValue({ maxDepth: 3 }),
    fc.constantFrom(
      1e9,
      -1,
      1e308,
      "1e9 mm",
      "-3 mm",
      "NaN",
      "",
      "∞",
      "1/0 in",
      "__proto__",
      [],
      {},
      [[0, 0]],
      null,
    ),
    fc.string({ unit: "binary" }),
  );
  fc.assert(
    fc.property(fc.constantFrom(...allPlaces), junk, (path, value) => void judge(withValue(path, value))),
    { numRuns: 150, endOnFailure: true },
  );
});

test("any text, and the file cut or with characters changed: never thrown", () => {
  const damaged = fc
    .tuple(fc.nat(text.length), fc.nat(40), fc.string())
    .map(([at, cut, put]) => text.slice(0, at) + put + text.slice(at + cut));
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: "binary" }), fc.json(), damaged), (input) => void judge(input)),
    { numRuns: 150, endOnFailure: true },
  );
  expect(judge(" ".repeat(MOST_CHARACTERS + 1))).toBe(false);
});

test("hostile keys are refused as unknown, and change nothing else", () => {
  for (const key of ["__proto__", "constructor", "toString", "hasOwnProperty"]) {
    const hostile = text.replace('"bags": 3,', `"bags": 3, "${key}": { "polluted": true },`);
    expect(judge(hostile)).toBe(false);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  }
});

test("what is written reads back to the same project, in every unit, and writing again gives the same text", () => {
  const first = readProject(text);
  if (!first.ok) throw new Error("the demo project must be readable");
  for (const unit of ["mm", "cm", "m", "in", "ft", "yd"] as const) {
    const project = { ...first.value, unit };
    const written = writeProject(project);
    const again = readProject(written);
    expect(again).toEqual({ ok: true, value: project });
    expect(again.ok && writeProject(again.value)).toBe(written);
  }
});

import { expect, test } from "vitest";
import { changed, mutantsOf } from "../tools/mutate.ts";

const made = (code: string): string[] => mutantsOf("a.ts", code).map((mutant) => changed(code, mutant));

test("operators are swapped, conditions forced, numbers moved, calls left out: one place at a time", () => {
  expect(made("const a = b < 2;")).toEqual(["const a = b <= 2;", "const a = b < 3;"]);
  expect(made("if (!a) go();")).toEqual(["if (true) go();", "if (false) go();", "if (a) go();", "if (!a) ;"]);
  expect(made("return x - y === z;")).toEqual(["return x - y !== z;", "return x + y === z;"]);
});

test("types, imports and texts that are put together stay", () => {
  expect(made('import a from "b"; type C = 1 | 2; const d = "e" + f;')).toEqual([]);
});

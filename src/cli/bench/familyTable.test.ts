import { expect, test } from "vitest";
import type { BenchLine } from "./benchLine.ts";
import { familiesOf, familyTable } from "./familyTable.ts";

const line = (name: string, length: number, bound: number): BenchLine => ({
  name,
  kind: "rect-strip",
  stripWidth: 1,
  length,
  density: 1,
  bound,
  gap: (length - bound) / bound,
  seconds: 1,
  firstSeconds: 1,
  firstDensity: 1,
  threads: 1,
  evaluations: 1,
  seed: 1,
  placements: [],
});

test("instances of one family are told by their names", () => {
  expect(familiesOf("C1-P1")).toEqual(["C"]);
  expect(familiesOf("N13")).toEqual(["N"]);
  expect(familiesOf("bag-3-turns")).toEqual(["bag-turns"]);
  expect(familiesOf("BWMV10_100_02")).toEqual(["BWMV class 10", "BWMV"]);
});

test("means stand beside published figures, and only where these are comparable", () => {
  const lines = [
    line("C1-P1", 21, 20),
    line("C1-P2", 20, 20),
    line("gcut1", 1016, 1016),
    line("gcut2", 1200, 1184),
  ];
  const table = familyTable(lines, true).split("\n");
  expect(table[1]).toMatch(/^C +2 +2\.500 +1 +1\.030 +Belov/);
  // 0 and 20 ÷ 1184, their mean: by hand.
  expect(table[2]).toMatch(/^gcut +2 +0\.676 +1 +0\.845 +Belov/);
  expect(familyTable(lines, false)).not.toContain("Belov");
  expect(familyTable([line("one", 2, 1)], true)).toBe("");
});

import { expect, test } from "vitest";
import { PAPERS } from "../../project/papers.ts";
import { describePrinter, diagnosePrinter } from "./printer.ts";

const common = PAPERS.filter(({ id }) => ["A4", "Letter"].includes(id));

test("a Letter page fitted on A4 is named (own arithmetic: 210 / 215.9 = 0.973; a 4 in square reads 3.89 in)", () => {
  const finding = diagnosePrinter(4, 3.89, 3.89, common);
  expect([finding.kind, finding.papers]).toEqual(["fit-to-page", ["Letter", "A4"]]);
  expect(describePrinter(finding)).toContain("fit to page");
  expect(diagnosePrinter(100, 94.1, 94.1, common).papers).toEqual(["A4", "Letter"]);
});

test("shrunk alike into the printer's margins is still a fit to page", () => {
  const finding = diagnosePrinter(100, 96, 96, common);
  expect([finding.kind, finding.papers]).toEqual(["fit-to-page", null]);
});

test("a true printer needs nothing, a worn one is corrected each way", () => {
  expect(diagnosePrinter(100, 100.1, 99.9, common)).toEqual({
    kind: "true",
    correction: { x: 1, y: 1 },
    papers: null,
  });
  const worn = diagnosePrinter(100, 99.2, 100.4, common);
  expect(worn.kind).toBe("uneven");
  expect(worn.correction.x * 99.2).toBeCloseTo(100, 9);
  expect(worn.correction.y * 100.4).toBeCloseTo(100, 9);
  expect(diagnosePrinter(100, 99.5, 99.5, common).kind).toBe("off");
  expect(() => diagnosePrinter(100, 0, 100, common)).toThrow(RangeError);
});

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

// Own arithmetic: a ruler shows no less than a tenth of a millimetre on 100.
test("what a ruler cannot show is true, what it can is not, either way alone", () => {
  const kind = (x: number, y: number) => diagnosePrinter(100, x, y, common).kind;
  expect(kind(100.15 - 1e-9, 99.85 + 1e-9)).toBe("true");
  expect(kind(100.16, 100)).toBe("off");
  expect(kind(100, 99.84)).toBe("off");
  expect(kind(99.84, 99.84)).toBe("off");
  // Up to four tenths apart both ways are alike.
  expect(kind(99.3, 99.69)).toBe("off");
  expect(kind(99.3, 99.71)).toBe("uneven");
  expect(kind(99.71, 99.3)).toBe("uneven");
  // One per cent alike both ways was done on purpose, larger or smaller.
  expect([kind(99.1, 99.1), kind(98.99, 98.99), kind(100.9, 100.9), kind(101.01, 101.01)]).toEqual([
    "off",
    "fit-to-page",
    "off",
    "fit-to-page",
  ]);
});

test("papers are named where the factor is theirs to four thousandths, the nearest pair first", () => {
  const papers = (factor: number, of = PAPERS) => diagnosePrinter(100, factor * 100, factor * 100, of).papers;
  // A4 to A3 and back: the short side of one is the long side of the next, 297 / 210 and 210 / 297.
  const isoA = PAPERS.filter(({ id }) => ["A4", "A3"].includes(id));
  expect(papers(210 / 297, isoA)).toEqual(["A3", "A4"]);
  expect(papers(Math.min(297 / 210, 420 / 297), isoA)).toEqual(["A4", "A3"]);
  expect(papers(210 / 297 + 0.0039, isoA)).toEqual(["A3", "A4"]);
  expect(papers(210 / 297 + 0.0041, isoA)).toBeNull();
  expect(papers(210 / 297 - 0.0041, isoA)).toBeNull();
  expect(papers(0.973, common)).toEqual(["Letter", "A4"]);
});

test("the finding is told in a sentence with its figures", () => {
  const told = (x: number, y: number, language: "en" | "de" = "en") =>
    describePrinter(diagnosePrinter(100, x, y, common), language);
  expect(told(100, 100)).toBe("The printer is true: no correction needed.");
  expect(told(94.1, 94.1)).toContain("off by the same 5.9 % as when a page for A4 is fitted on Letter");
  expect(told(96, 96)).toMatch(/off by the same 4\.0 %: the print window/u);
  expect(told(99.5, 99.5)).toContain("off by 0.5 %: pages are drawn ×1.0050 across and ×1.0050 down");
  expect(told(99.2, 100.4, "de")).toContain("×1,0081 quer und ×0,9960 hoch");
  expect(diagnosePrinter(100, 94.1, 94.2, common).correction).toEqual({ x: 100 / 94.1, y: 100 / 94.2 });
  expect(() => diagnosePrinter(0, 1, 1, common)).toThrow(RangeError);
  expect(() => diagnosePrinter(100, 100, -1, common)).toThrow(RangeError);
  expect(() => diagnosePrinter(100, 100, 0, common)).toThrow(RangeError);
});

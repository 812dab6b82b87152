import { expect, test } from "vitest";
import { PAPERS, paperNamed } from "./papers.ts";

// ISO 216:2007, table of the A series: each size halves the long side of the one before, rounded down to a millimetre.
test("the A series halves from A0, 841 × 1189 mm", () => {
  let [short, long] = [841, 1189];
  for (const id of ["A0", "A1", "A2", "A3", "A4", "A5"]) {
    expect(paperNamed(id)).toEqual({ id, width: short, height: long });
    [short, long] = [Math.floor(long / 2), short];
  }
});

// ASME Y14.1, table of flat sizes, in inches.
test("ASME sheets A to E in inches, and the office sheets", () => {
  const inches = (id: string) => {
    const paper = paperNamed(id)!;
    return [paper.width / 25.4, paper.height / 25.4].map((value) => Math.round(value * 1e9) / 1e9);
  };
  expect(["ASME A", "ASME B", "ASME C", "ASME D", "ASME E"].map(inches)).toEqual([
    [8.5, 11],
    [11, 17],
    [17, 22],
    [22, 34],
    [34, 44],
  ]);
  expect(["letter", "Legal", " TABLOID "].map(inches)).toEqual([
    [8.5, 11],
    [8.5, 14],
    [11, 17],
  ]);
  expect(paperNamed("B9")).toBeUndefined();
  expect(PAPERS.every((paper) => paper.width < paper.height)).toBe(true);
});

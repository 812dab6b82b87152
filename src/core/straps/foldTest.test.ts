import { expect, test } from "vitest";
import { expectedFold, FOLD_TESTS, fitFold } from "./foldTest.ts";

test.each(FOLD_TESTS)("readings off a %s strip folded with known traits give those traits back", (construction) => {
  const traits = { neutral: 0.37, clearance: 0.7 };
  const read = expectedFold(construction, 1.1, 100, traits);
  const fit = fitFold({ construction, thickness: 1.1, cutWidth: 100, ...read, readingError: 0.5 });
  if (!fit.ok) throw new Error("unreadable");
  expect(fit.value.neutral).toBeCloseTo(traits.neutral, 9);
  expect(fit.value.clearance).toBeCloseTo(traits.clearance, 9);
});

test.each(FOLD_TESTS)(
  "a reading off by its error moves a %s fit by no more than the error it states",
  (construction) => {
    const read = expectedFold(construction, 1, 100, { neutral: 0.5, clearance: 0.5 });
    const fitted = (width: number, setback: number) => {
      const readings = { finishedWidth: read.finishedWidth + width, setback: read.setback + setback };
      const result = fitFold({ construction, thickness: 1, cutWidth: 100, ...readings, readingError: 0.1 });
      if (!result.ok) throw new Error("unreadable");
      return result.value;
    };
    const exact = fitted(0, 0);
    for (const [width, setback] of [
      [0.1, 0],
      [0, 0.1],
      [-0.1, 0],
    ] as const) {
      expect(Math.abs(fitted(width, setback).neutral - exact.neutral)).toBeLessThanOrEqual(
        exact.neutralError + 1e-9,
      );
      expect(Math.abs(fitted(width, setback).clearance - exact.clearance)).toBeLessThanOrEqual(
        exact.clearanceError + 1e-9,
      );
    }
  },
);

test("readings that no material can give are refused", () => {
  const fit = fitFold({
    construction: "three-raw",
    thickness: 1,
    cutWidth: 100,
    finishedWidth: 60,
    setback: 3,
    readingError: 0.5,
  });
  expect(fit).toMatchObject({ ok: false, problems: [{ code: "strap-fold-test-unreadable" }] });
});

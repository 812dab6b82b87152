import { expect, test } from "vitest";
import { expectedFold, FOLD_TESTS, fitFold, measuredFold, saysSomething } from "./foldTest.ts";

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

const reading = { construction: "three-raw", thickness: 1, cutWidth: 100, readingError: 0.2 } as const;

// Errors of independent readings add up as the root of their squares (Taylor, An Introduction to Error Analysis); each
// one's share is found by moving that reading alone.
test("the error of K and of clearance is what both readings' errors make of it", () => {
  for (const construction of FOLD_TESTS) {
    const at = expectedFold(construction, 1, 100, { neutral: 0.5, clearance: 0.5 });
    const fitted = (width: number, setback: number) => {
      const moved = { finishedWidth: at.finishedWidth + width, setback: at.setback + setback };
      const fit = fitFold({ ...reading, construction, ...moved, readingError: 0.02 });
      if (!fit.ok) throw new Error("unreadable");
      return fit.value;
    };
    const [plain, wide, back] = [fitted(0, 0), fitted(0.02, 0), fitted(0, 0.02)];
    for (const trait of ["neutral", "clearance"] as const)
      expect(plain[`${trait}Error`]).toBeCloseTo(
        Math.hypot(wide[trait] - plain[trait], back[trait] - plain[trait]),
        9,
      );
    // Folded in three a width moves by a third of what its strip does, in four by a quarter.
    expect(plain.cutWidthError).toBeCloseTo(0.02 * (construction === "fourfold" ? 4 : 3), 9);
  }
});

test("traits just beyond what there can be are read as the limit when the error allows them", () => {
  const at = (neutral: number, clearance: number, readingError: number) => {
    const folded = expectedFold("three-raw", 1, 100, { neutral, clearance });
    return fitFold({ ...reading, ...folded, readingError });
  };
  const { neutralError } = (at(0.5, 0.5, 1) as { value: { neutralError: number } }).value;
  for (const [beyond, limit] of [
    [-0.1, 0],
    [1.1, 1],
  ] as const) {
    expect(at(beyond, 0.5, (0.1 / neutralError) * 1.01)).toMatchObject({ ok: true, value: { neutral: limit } });
    const refused = at(beyond, 0.5, (0.1 / neutralError) * 0.99);
    expect(refused).toMatchObject({
      ok: false,
      problems: [{ code: "strap-fold-test-unreadable", path: "", neutral: expect.closeTo(beyond, 9) }],
    });
  }
  expect(at(0.5, 1.2, 0.1)).toMatchObject({ ok: true, value: { clearance: 1 } });
  expect(at(0.5, -0.2, 0.1)).toMatchObject({ ok: true, value: { clearance: 0 } });
});

// Mean of independent measurements, each weighed by the inverse square of its error (Taylor, chapter 7).
test("several tests: the better read one counts for more, one that says nothing not at all, each construction by itself", () => {
  const folded = (neutral: number, readingError: number, construction: "three-raw" | "fourfold" = "three-raw") => ({
    ...{ ...reading, construction, readingError },
    ...expectedFold(construction, 1, 100, { neutral, clearance: 0.4 }),
  });
  const [one, two] = [folded(0.4, 0.1), folded(0.6, 0.2)];
  const errors = [one, two].map((test) => {
    const fit = fitFold(test);
    return fit.ok ? fit.value.neutralError : Number.NaN;
  });
  const weights = errors.map((error) => 1 / error ** 2);
  const { neutral, clearance } = measuredFold({ tests: [one, two] });
  expect(neutral!.value).toBeCloseTo((0.4 * weights[0]! + 0.6 * weights[1]!) / (weights[0]! + weights[1]!), 9);
  expect(neutral!.error).toBeCloseTo(1 / Math.sqrt(weights[0]! + weights[1]!), 9);
  expect(clearance["three-raw"]!.value).toBeCloseTo(0.4, 9);
  expect(clearance).not.toHaveProperty("fourfold");
  expect(measuredFold({ tests: [one, folded(0.6, 5)] }).neutral!.value).toBeCloseTo(0.4, 9);
  expect(measuredFold({ tests: [folded(0.6, 5)] })).toEqual({ neutral: null, clearance: {} });
  // Both constructions tell K; nobody reads better than a hundredth.
  const exact = measuredFold({ tests: [folded(0.4, 0), folded(0.6, 0, "fourfold")] });
  expect(exact.neutral!.value).toBeCloseTo(0.5, 9);
  expect(exact.neutral!.error).toBeCloseTo(0.01 / Math.SQRT2, 9);
  expect(Object.keys(exact.clearance)).toEqual(["three-raw", "fourfold"]);
  // What cannot be read, or was folded another way, says nothing.
  expect(measuredFold({ tests: [{ ...one, finishedWidth: 60 }, { ...one, construction: "tube" }, one] })).toEqual(
    measuredFold({ tests: [one] }),
  );
  expect(measuredFold({})).toEqual({ neutral: null, clearance: {} });
});

test("a fit says something where K or clearance is known to better than half its range", () => {
  const fit = { neutral: 0.5, clearance: 0.5, cutWidthError: 1 };
  const says = (neutralError: number, clearanceError: number) =>
    saysSomething({ ...fit, neutralError, clearanceError });
  expect([says(0.49, 3), says(3, 0.49), says(0.5, 0.5)]).toEqual([true, true, false]);
});

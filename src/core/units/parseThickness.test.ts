import { expect, test } from "vitest";
import { readThickness, saysOunces } from "./parseThickness.ts";

// Leather's ounce is 1/64 in (common practice, no source); 1 in = 25.4 mm: international yard and pound agreement, 1959.
test("leather's ounces are 64ths of an inch, with a point or a comma, spelt out or short", () => {
  for (const [text, ounces] of [
    ["5 oz", 5],
    ["5oz.", 5],
    ["3.5 ounces", 3.5],
    ["3,5 oz", 3.5],
    ["1 ounce", 1],
  ] as const)
    expect(readThickness(text, "mm", "t", true), text).toEqual({ ok: true, value: ounces * (25.4 / 64) });
});

test("a range of ounces is no thickness: both ends are told; ounces of cloth are none either", () => {
  for (const text of ["3/4 oz", "3-4 oz", "3 - 4 oz"])
    expect(readThickness(text, "mm", "t", true), text).toEqual({
      ok: false,
      problems: [{ code: "thickness-range", path: "t", text, lowMm: 3 * (25.4 / 64), highMm: 4 * (25.4 / 64) }],
    });
  expect(readThickness("5 oz", "mm", "t", false)).toEqual({
    ok: false,
    problems: [{ code: "thickness-in-cloth-ounces", path: "t", text: "5 oz" }],
  });
});

test("lengths are lengths, up to an inch less 0.4 mm; what is longer than forty signs is not read as ounces", () => {
  expect(readThickness("1.2 mm", "mm", "t", false)).toEqual({ ok: true, value: 1.2 });
  expect(readThickness(25, "mm", "t", true)).toEqual({ ok: true, value: 25 });
  for (const tooMuch of [25.01, "64 oz", -0.1])
    expect(readThickness(tooMuch, "mm", "t", true)).toMatchObject({ problems: [{ code: "length-out-of-range" }] });
  expect([5, "5", "5 oz", null].map(saysOunces)).toEqual([false, false, true, false]);
  expect([`${"0".repeat(35)}5 oz`, `${"0".repeat(36)}5 oz`].map(saysOunces)).toEqual([true, false]);
});

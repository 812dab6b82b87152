import { expect, test } from "vitest";
import type { LengthUnit } from "./lengthWords.ts";
import { parseLength, readLength } from "./parseLength.ts";

const mm = (text: string, unit: LengthUnit = "mm"): number | string => {
  const read = parseLength(text, unit, "width");
  return read.ok ? read.value : read.problems[0]!.code;
};

// 1 in = 25.4 mm, 1 yd = 0.9144 m exactly: international yard and pound agreement, 1959.
test.each([
  ["3 7/8 in", 98.425],
  ['3-7/8"', 98.425],
  ["3⅞ in", 98.425],
  ["3⅞″", 98.425],
  ["2½ inches", 63.5],
  ["½ in", 12.7],
  ["7/8 in.", 22.225],
  ["98.4 mm", 98.4],
  ["12 cm", 120],
  ["12,5cm", 125],
  [",5 cm", 5],
  ["1.2 m", 1200],
  ["1 m 20", 1200],
  ["1 m 20 cm", 1200],
  ["1m5", 1050],
  ["1 yd 4 in", 1016],
  ["1 yd", 914.4],
  ["2 yards 1 foot 3 1/2 in", 2222.5],
  ["5' 6\"", 1676.4],
  ["5′ 6″", 1676.4],
  ["5’6”", 1676.4],
  ["5' 6", 1676.4],
  ["5 ft 6 1/4", 1682.75],
  ["  40  ", 40],
  ["0.1 in", 2.54],
  ["1/3 in", 25.4 / 3],
  ["0", 0],
])("%s is %d mm", (text, expected) => {
  expect(mm(text)).toBe(expected);
});

test("a bare number is in the stated unit, a JSON number too, exactly", () => {
  expect(mm("3 7/8", "in")).toBe(98.425);
  expect(readLength(3.875, "in", "w")).toEqual({ ok: true, value: 98.425 });
  expect(readLength(0.1, "in", "w")).toEqual({ ok: true, value: 2.54 });
  expect(readLength(1.1, "cm", "w")).toEqual({ ok: true, value: 11 });
});

test.each([
  ["", "length-unreadable"],
  ["wide", "length-unreadable"],
  ["3 4 in", "length-unreadable"],
  ["3-4 mm", "length-unreadable"],
  ["1 yd 4", "length-unreadable"],
  ["1 m 20 5", "length-unreadable"],
  ["5 mm 3", "length-unreadable"],
  ["3 7/0 in", "length-fraction-by-zero"],
  ["3 7/8", "length-fraction-bare"],
  ["½", "length-fraction-bare"],
  ["3 furlongs", "length-unit-unknown"],
  ["1 m 2 in", "length-units-mixed"],
  ["4 in 1 ft", "length-units-mixed"],
  ["1,250 m", "length-ambiguous"],
  ["-3 mm", "length-out-of-range"],
  ["1000000000 mm", "length-out-of-range"],
  ["1e9", "length-unit-unknown"],
  ["9".repeat(5000), "length-unreadable"],
])("%s is refused: %s", (text, code) => {
  expect(mm(text)).toBe(code);
});

test("numbers that are no lengths are refused with their path", () => {
  expect(readLength(Number.NaN, "mm", "a.b")).toEqual({
    ok: false,
    problems: [{ code: "length-not-finite", path: "a.b", text: "NaN" }],
  });
  expect(readLength(1e9, "mm", "a").ok).toBe(false);
  expect(readLength(-1, "mm", "a", { minMm: -5, maxMm: 5 })).toEqual({ ok: true, value: -1 });
});

test("the ends of a range belong to it, a text of eighty signs is read and a longer one is not", () => {
  const ends = { minMm: -5, maxMm: 5 };
  expect([-5, 5].map((value) => readLength(value, "mm", "a", ends).ok)).toEqual([true, true]);
  expect([-5.001, 5.001].map((value) => readLength(value, "mm", "a", ends).ok)).toEqual([false, false]);
  expect(mm(`${"0".repeat(74)}7 mm`)).toBe(7);
  expect(mm(`${"0".repeat(76)}7 mm`)).toBe(7);
  expect(mm(`${"0".repeat(77)}7 mm`)).toBe("length-unreadable");
});

test("numbers that write themselves with an exponent are in the stated unit too", () => {
  expect(readLength(1e-7, "cm", "a")).toEqual({ ok: true, value: 1e-6 });
});

// More figures than a double holds: the nearest one, told by the reader of the language itself.
test("figures beyond what a number holds round once, to the nearest", () => {
  for (const digits of [
    "123456.78901234567890123456789",
    "0.12345678901234567890123456789012",
    "9007199254740993.5",
  ])
    expect(readLength(digits, "mm", "a", { minMm: 0, maxMm: 1e300 })).toEqual({ ok: true, value: Number(digits) });
  const whole = "9".repeat(38);
  expect(readLength(whole, "mm", "a", { minMm: 0, maxMm: 1e300 })).toEqual({ ok: true, value: Number(whole) });
});

test("a length of a kilometre is read, half a millimetre more is not", () => {
  expect(mm("1000 m")).toBe(1_000_000);
  expect(mm("1000000.5 mm")).toBe("length-out-of-range");
});

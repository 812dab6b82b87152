import { expect, test } from "vitest";
import { formatLength, showLength, writeLength } from "./formatLength.ts";

test("lengths in each style, marked when the text is more than 0.05 mm away", () => {
  expect(formatLength(98.425, "in/16")).toBe("3 7/8 in");
  expect(formatLength(98.425, "mm")).toBe("98.4 mm");
  expect(formatLength(98.425, "cm")).toBe("9.84 cm");
  expect(formatLength(1200, "m")).toBe("1.2 m");
  expect(formatLength(1371.6, "yd/8")).toBe("1 1/2 yd");
  expect(formatLength(101, "in/16")).toBe("≈4 in");
  expect(formatLength(12.7, "in/16")).toBe("1/2 in");
  expect(formatLength(0, "in/32")).toBe("0 in");
  expect(formatLength(-12.7, "in/32")).toBe("-1/2 in");
  expect(formatLength(-0.01, "mm")).toBe("0 mm");
  expect(showLength(100, "in/32").offByMm).toBeCloseTo((3 + 30 / 32) * 25.4 - 100, 9);
});

test("what is written reads back to the same number", () => {
  expect(writeLength(98.425, "in")).toBe("3 7/8 in");
  expect(writeLength(98.425, "mm")).toBe("98.425 mm");
  expect(writeLength(2.54, "in")).toBe("0.1 in");
  expect(writeLength(100, "in")).toBe("100 mm");
  expect(writeLength(1e-9, "m")).toBe("0.000000000001 m");
  expect(writeLength(1.5e-15, "mm")).toBe("0.0000000000000015 mm");
  expect(writeLength(2 ** 80, "mm")).toBe("1208925819614629200000000 mm");
  expect(() => writeLength(Number.NaN, "mm")).toThrow(RangeError);
});

test("signs stand before what is left after rounding, marks where it is more than half a tenth away", () => {
  expect([-0.01, -0.8, -1.6].map((mm) => formatLength(mm, "in/32"))).toEqual(["0 in", "-1/32 in", "-1/16 in"]);
  // Halves of a tenth lie at the very edge.
  for (const mm of [98.45, 98.35, 0.05]) expect(formatLength(mm, "mm")).not.toContain("≈");
  expect(formatLength(98.46, "cm")).toBe("9.85 cm");
  expect(formatLength(98.449, "m")).toBe("≈0.098 m");
});

test("a length that takes more than twelve places in its unit is written in millimetres", () => {
  expect(writeLength(1e-10, "m")).toBe("0.0000000001 mm");
  expect(writeLength(1.5e-7, "mm")).toBe("0.00000015 mm");
  expect(writeLength(0.5, "in")).toBe("0.5 mm");
  expect(writeLength(-3.175, "in")).toBe("-1/8 in");
});

// 1 ft = 304.8 mm, 1 yd = 914.4 mm: international yard and pound agreement, 1959; the others are SI.
test("one of each unit is written as one", () => {
  const units = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8, yd: 914.4 } as const;
  for (const [unit, mm] of Object.entries(units) as [keyof typeof units, number][])
    expect(writeLength(mm, unit)).toBe(`1 ${unit}`);
});

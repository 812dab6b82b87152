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

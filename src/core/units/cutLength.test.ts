import { expect, test } from "vitest";
import { cutLength } from "./cutLength.ts";
import { formatLength } from "./formatLength.ts";

// By hand: 9 13/16 in are 249.24 mm, 0.76 mm short of 250; 14 3/16 in are 360.36 mm, 0.36 mm over 360.
test("inches to the sixteenth are marked only where they are further off than a cut is", () => {
  expect(cutLength(250, "in/16")).toBe("≈9 13/16 in");
  expect(cutLength(360, "in/16")).toBe("14 3/16 in");
  expect(cutLength(254, "in/16")).toBe("10 in");
});

// By hand: 1/16 in is 1.59 mm, 0.29 mm over 1.3, which is more than a fifth of it; 1/8 in is 3.18 mm, 0.02 mm under 3.2.
test("a small length that rounding changes by more than a tenth is marked", () => {
  expect(cutLength(1.3, "in/16")).toBe("≈1/16 in");
  expect(cutLength(0.2, "in/32")).toBe("≈0 in");
  expect(cutLength(3.2, "in/16")).toBe("1/8 in");
  expect(cutLength(0, "in/16")).toBe("0 in");
});

test("to the thirty-second no length of a piece is off by more than a cut", () => {
  for (let mm = 10; mm < 400; mm += 0.37) expect(cutLength(mm, "in/32")).not.toContain("≈");
});

test("metres to the millimetre carry no mark, yards to the eighth do", () => {
  expect(cutLength(499.1, "m")).toBe("0.499 m");
  expect(cutLength(1490, "yd/8")).toBe("≈1 5/8 yd");
});

test("millimetres and centimetres stay as they are", () => {
  expect(cutLength(98.44, "mm")).toBe("98.4 mm");
  expect(cutLength(98.44, "cm")).toBe("9.84 cm");
});

test("millimetres and centimetres are written as they are, also where a small length is rounded by much", () => {
  // Here no tenth of the length is told, only what the last place leaves out.
  expect(cutLength(0.04, "mm")).toBe(formatLength(0.04, "mm"));
  expect(cutLength(0.3, "cm")).toBe(formatLength(0.3, "cm"));
  expect(() => cutLength(Number.NaN, "mm")).toThrow(RangeError);
  expect(() => cutLength(Number.POSITIVE_INFINITY, "in/16")).toThrow(RangeError);
});

import { expect, test } from "vitest";
import { isRectangle, rectangleRing, reversedRing, signedArea } from "./ring.ts";

test("a rectangle's area is signed by its winding", () => {
  const ring = rectangleRing(1, 2, 3, 4);
  expect(signedArea(ring)).toBe(12);
  expect(signedArea(reversedRing(ring))).toBe(-12);
  expect(isRectangle(ring)).toBe(true);
  expect(isRectangle(Float64Array.of(0, 0, 2, 0, 2, 1, 0, 2))).toBe(false);
});

import { expect, test } from "vitest";
import { boxesMeet, boxesOverlap, boxHolds, boxOfAll, EMPTY_BOX, isRectangle, ringBox } from "./box.ts";
import { rectangleRing, reversedRing, signedArea } from "./ring.ts";

test("a rectangle's area is signed by its winding", () => {
  const ring = rectangleRing(1, 2, 3, 4);
  expect(signedArea(ring)).toBe(12);
  expect(signedArea(reversedRing(ring))).toBe(-12);
  expect(isRectangle(ring)).toBe(true);
  expect(isRectangle(Float64Array.of(0, 0, 2, 0, 2, 1, 0, 2))).toBe(false);
});

test("boxes side by side meet but do not overlap; one holds another but for its slack", () => {
  const [left, right] = [ringBox(rectangleRing(0, 0, 10, 10)), ringBox(rectangleRing(10, 2, 5, 5))];
  expect([boxesMeet(left, right), boxesOverlap(left, right)]).toEqual([true, false]);
  expect(boxOfAll([left, right])).toEqual({ minX: 0, minY: 0, maxX: 15, maxY: 10 });
  expect(boxOfAll([])).toEqual(EMPTY_BOX);
  expect([boxHolds(left, right, 4), boxHolds(left, right, 5)]).toEqual([false, true]);
});

import { expect, test } from "vitest";
import { addCorner, cornerAt, cornersOf, moveCorner, removeCorner } from "./outlineEdits.ts";

const square = { closed: true, vertices: Float64Array.of(0, 0, 0, 100, 0, 0, 100, 100, 0, 0, 100, 0) };

test("a new corner lies in the middle of its edge, and taking it away brings the outline back", () => {
  const more = addCorner(square, 1);
  expect(cornersOf(more)[2]).toEqual({ x: 100, y: 50 });
  expect(removeCorner(more, 2)).toEqual(square);
  expect(cornersOf(addCorner(square, 3))[4]).toEqual({ x: 0, y: 50 });
});

test("moving a corner leaves the others; a triangle keeps its corners", () => {
  expect(cornersOf(moveCorner(square, 2, 90, 95))).toEqual([
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 90, y: 95 },
    { x: 0, y: 100 },
  ]);
  const triangle = removeCorner(square, 0);
  expect(removeCorner(triangle, 0)).toBe(triangle);
});

test("a corner is found again after its outline was turned round, and keeps its number when it is nowhere", () => {
  const turned = { closed: true, vertices: Float64Array.of(0, 0, 0, 0, 100, 0, 100, 100, 0, 100, 0, 0) };
  expect(cornerAt(square, { x: 100, y: 0 }, 1)).toBe(1);
  expect(cornerAt(turned, { x: 100, y: 0 }, 1)).toBe(3);
  expect(cornerAt(turned, { x: 55, y: 5 }, 2)).toBe(2);
});

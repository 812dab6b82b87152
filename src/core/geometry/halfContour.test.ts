import { expect, test } from "vitest";
import { contourArea } from "./contourEdgeLengths.ts";
import { circleContour, straightContour } from "./contourShapes.ts";
import { halfContour } from "./halfContour.ts";

test("half a circle has half its area, to the last digit, and its chord is the closing edge", () => {
  const half = halfContour(circleContour(30, 40, 25), 40)!;
  expect(contourArea(half)).toBeCloseTo((Math.PI * 25 * 25) / 2, 9);
  const { vertices } = half;
  expect([vertices[1], vertices.at(-2), vertices.at(-1)]).toEqual([40, 40, 0]);
  expect(Math.abs(vertices[0]! - vertices.at(-3)!)).toBeCloseTo(50, 9);
});

test("a segment of a circle has the area of the handbook's formula", () => {
  // Segment of height h: r² acos(1 − h / r) − (r − h) √(2 r h − h²): circle geometry, as handbooks print it..
  const [r, h] = [25, 8];
  const area = r * r * Math.acos(1 - h / r) - (r - h) * Math.sqrt(2 * r * h - h * h);
  expect(contourArea(halfContour(circleContour(0, 0, r), r - h)!)).toBeCloseTo(area, 9);
});

test("a line that misses an outline or meets it four times halves nothing", () => {
  const square = straightContour([0, 0, 10, 0, 10, 10, 0, 10], true);
  expect(halfContour(square, 11)).toBeNull();
  const tines = straightContour([0, 0, 30, 0, 30, 20, 20, 20, 20, 5, 10, 5, 10, 20, 0, 20], true);
  expect(halfContour(tines, 10)).toBeNull();
  expect(contourArea(halfContour(tines, 2)!)).toBeCloseTo(30 * 18 - 10 * 15, 9);
});

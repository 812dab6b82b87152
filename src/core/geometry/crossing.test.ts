import { expect, test } from "vitest";
import { firstCrossing } from "./crossing.ts";
import { rectangleRing } from "./ring.ts";

const crossing = (...points: number[]) => firstCrossing(Float64Array.from(points));

test("simple rings have no crossing, convex or not", () => {
  expect(firstCrossing(rectangleRing(0, 0, 3, 2))).toBeNull();
  expect(crossing(0, 0, 4, 0, 4, 4, 2, 1, 0, 4)).toBeNull();
  expect(crossing(0, 0, 2, 0, 4, 0, 4, 4)).toBeNull();
});

test("a bow tie crosses in its middle", () => {
  expect(crossing(0, 0, 2, 2, 2, 0, 0, 2)).toEqual({ first: 0, second: 2, x: 1, y: 1 });
});

test("touching at a vertex and running back over an edge are found", () => {
  expect(crossing(0, 0, 4, 0, 4, 4, 2, 0, 0, 4)).toMatchObject({ x: 2, y: 0 });
  expect(crossing(0, 0, 4, 0, 2, 0, 2, 3)).toMatchObject({ first: 0, second: 1 });
  expect(crossing(0, 0, 4, 0, 4, 4, 4, -1)).not.toBeNull();
});

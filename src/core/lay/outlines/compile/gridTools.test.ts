import { expect, test } from "vitest";
import { turnCosSin } from "../../../geometry/pose.ts";
import { type Ring, signedArea, solid } from "../../../geometry/ring.ts";
import { polygonToGrid, turnedShape } from "./gridTools.ts";

/** Sharpest right turn at a corner of a counter-clockwise ring, as a cross product; none when it is not below 0. */
function sharpestRight(ring: Ring): number {
  const n = ring.length;
  const at = (i: number): number => ring[(i + n) % n]!;
  let least = Infinity;
  for (let i = 0; i < n; i += 2) {
    const cross = (at(i) - at(i - 2)) * (at(i + 3) - at(i + 1)) - (at(i + 1) - at(i - 1)) * (at(i + 2) - at(i));
    least = Math.min(least, cross);
  }
  return least;
}

test("a shape whose outward offset left edges of a few grid units keeps convex parts at every turn", () => {
  const ring = Float64Array.of(
    2,
    -12085,
    20933,
    0,
    2,
    12085,
    -20925,
    24167,
    -20929,
    24164,
    -20929,
    -24164,
    -20925,
    -24167,
  );
  const shape = polygonToGrid(solid(ring), 1, 0, 0);
  for (let turnDeg = 1; turnDeg < 360; turnDeg++)
    for (const flip of [1, -1]) {
      const { outer, solidParts } = turnedShape(shape, ...turnCosSin(turnDeg), flip);
      for (const part of solidParts) expect(sharpestRight(part)).toBeGreaterThanOrEqual(0);
      const area = solidParts.reduce((sum, part) => sum + signedArea(part), 0);
      expect(area / signedArea(outer)).toBeCloseTo(1, 12);
    }
});

import { expect, test } from "vitest";
import { convexParts } from "./convexParts.ts";
import { frameNoFitRings, gridShape, noFitRings } from "./noFit.ts";
import { rectangleRing, reversedRing, ringBox, signedArea } from "./ring.ts";

test("two boxes: the no-fit polygon is the box of both sizes", () => {
  const a = gridShape(rectangleRing(-2, -1, 4, 2), []);
  const b = gridShape(rectangleRing(-3, -3, 6, 6), []);
  const rings = noFitRings(a, b);
  expect(rings).toHaveLength(1);
  expect(ringBox(rings[0]!)).toEqual({ minX: -5, minY: -4, maxX: 5, maxY: 4 });
  expect(rings[0]!.length).toBe(8);
});

test("a box that fits loosely into a notch has a pocket in its no-fit polygon", () => {
  const cup = gridShape(Float64Array.of(-10, -10, 10, -10, 10, 10, 4, 10, 4, -4, -4, -4, -4, 10, -10, 10), []);
  const box = gridShape(rectangleRing(-3, -3, 6, 6), []);
  const [ring] = noFitRings(cup, box);
  // Outer box 26 × 26 less the channel 2 wide, from the mouth at y = 13 down to where the box rests, y = −1.
  expect(signedArea(ring!)).toBe(26 * 26 - 2 * 14);
});

test("a ring keeps a hole for what fits inside it", () => {
  const ring = gridShape(rectangleRing(-10, -10, 20, 20), [reversedRing(rectangleRing(-5, -5, 10, 10))]);
  const small = gridShape(rectangleRing(-2, -2, 4, 4), []);
  const areas = noFitRings(ring, small).map(signedArea);
  expect(areas.sort((a, b) => a - b)).toEqual([-36, 24 * 24]);
  const other = noFitRings(small, ring).map(signedArea);
  expect(other.sort((a, b) => a - b)).toEqual([-36, 24 * 24]);
});

test("inside a frame the inner-fit polygon is where the piece's centre may be", () => {
  const frame = gridShape(rectangleRing(-60, -60, 120, 120), [
    reversedRing(Float64Array.of(-50, -50, 50, -50, 50, 0, 0, 0, 0, 50, -50, 50)),
  ]);
  const box = gridShape(rectangleRing(-5, -5, 10, 10), []);
  const rings = frameNoFitRings(frame, box);
  expect(rings).toHaveLength(1);
  expect(signedArea(rings[0]!)).toBe(-(90 * 90 - 50 * 50));
  expect(frameNoFitRings(frame, gridShape(rectangleRing(-30, -30, 60, 60), []))).toEqual([]);
});

test("convex parts cover the shape and are convex", () => {
  const ring = Float64Array.of(0, 0, 9, 0, 9, 9, 6, 3, 3, 9, 0, 3);
  const parts = convexParts(ring, []);
  expect(parts.reduce((sum, part) => sum + signedArea(part), 0)).toBe(signedArea(ring));
  for (const part of parts) {
    const n = part.length;
    for (let i = 0; i < n; i += 2) {
      const [ax, ay] = [part[(i + 2) % n]! - part[i]!, part[(i + 3) % n]! - part[i + 1]!];
      const [bx, by] = [part[(i + 4) % n]! - part[(i + 2) % n]!, part[(i + 5) % n]! - part[(i + 3) % n]!];
      expect(ax * by - ay * bx).toBeGreaterThanOrEqual(0);
    }
  }
});

import { minkowskiDiff } from "clipper2-ts";
import { expect, test } from "vitest";
import { ringBox } from "./box.ts";
import { convexParts } from "./convexParts.ts";
import { frameNoFitRings, gridShape, noFitRings } from "./noFit.ts";
import { rectangleRing, reversedRing, signedArea } from "./ring.ts";

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

/** A gear of `teeth` teeth: simple, half of its corners reflex. */
function gear(teeth: number, size: number): Float64Array {
  const points: number[] = [];
  for (let i = 0; i < 2 * teeth; i++) {
    const turn = (Math.PI * i) / teeth;
    const radius = i % 2 === 0 ? size : 0.8 * size;
    points.push(Math.round(radius * Math.cos(turn)), Math.round(radius * Math.sin(turn)));
  }
  return Float64Array.from(points);
}

// A general-purpose reference library (clipper2-ts): Minkowski difference of the two outlines.
test("many teeth, united in steps: the same outline as the reference library's", () => {
  const a = gear(60, 100_000);
  const b = gear(40, 60_000);
  const path = (ring: Float64Array) =>
    Array.from({ length: ring.length / 2 }, (_, i) => ({ x: ring[2 * i]!, y: ring[2 * i + 1]! }));
  const areas = noFitRings(gridShape(a, []), gridShape(b, [])).map(signedArea);
  const expected = minkowskiDiff(path(b), path(a), true).map((ring) =>
    signedArea(Float64Array.from(ring.flatMap(({ x, y }) => [x, y]))),
  );
  const largest = (all: readonly number[]): number => Math.max(...all.map(Math.abs));
  // Crossings are rounded to the grid: a unit along the outline at most.
  expect(Math.abs(largest(areas) - largest(expected))).toBeLessThan(2 * Math.PI * 160_000);
});

test("two panels of 160 teeth: as far apart as their sizes, and done in seconds", () => {
  const one = gridShape(gear(160, 1_000_000), []);
  const rings = noFitRings(one, one);
  const box = ringBox(rings.reduce((a, b) => (signedArea(b) > signedArea(a) ? b : a)));
  expect(box).toEqual({ minX: -2_000_000, minY: -2_000_000, maxX: 2_000_000, maxY: 2_000_000 });
});

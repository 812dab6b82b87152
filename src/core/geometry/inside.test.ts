import fc from "fast-check";
import { expect, test } from "vitest";
import { isInside, isInsideRing } from "./inside.ts";
import { rectangleRing, reversedRing } from "./ring.ts";

/** The slow twin: how often the ring goes round the point, by the angles its edges are seen under. */
function turnsRound(ring: Float64Array, x: number, y: number): number {
  let sum = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[j]! - x, ring[j + 1]! - y, ring[i]! - x, ring[i + 1]! - y];
    sum += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  }
  return Math.round(sum / (2 * Math.PI));
}

test("a point is inside where the ring goes round it an odd number of times", () => {
  const corner = fc.integer({ min: 0, max: 40 });
  const ring = fc
    .array(corner, { minLength: 6, maxLength: 24 })
    .map((c) => Float64Array.from(c.slice(0, c.length & ~1)));
  // Points off the whole numbers by parts that no edge between them meets.
  const at = fc.integer({ min: -2, max: 42 });
  fc.assert(
    fc.property(ring, at, at, (points, i, j) => {
      const [x, y] = [i + Math.SQRT1_2, j + Math.PI - 3];
      expect(isInsideRing(points, x, y)).toBe(turnsRound(points, x, y) % 2 !== 0);
    }),
    { numRuns: 500 },
  );
});

test("a point as high as a corner counts that corner once", () => {
  const corner = fc.integer({ min: 0, max: 7 });
  const ring = fc
    .array(corner, { minLength: 6, maxLength: 14 })
    .map((c) => Float64Array.from(c.slice(0, c.length & ~1)));
  let inside = 0;
  fc.assert(
    fc.property(ring, corner, corner, (points, x, y) => {
      // A point on an edge may count either way.
      const isOn = [...points.keys()].some((i) => {
        if (i % 2 === 1) return false;
        const [ax, ay] = [points[i]! - x, points[i + 1]! - y];
        const [bx, by] = [points[(i + 2) % points.length]! - x, points[(i + 3) % points.length]! - y];
        return ax * by === ay * bx && ax * bx + ay * by <= 0;
      });
      fc.pre(!isOn);
      const wanted = turnsRound(points, x, y) % 2 !== 0;
      expect(isInsideRing(points, x, y)).toBe(wanted);
      if (wanted) inside++;
    }),
    { numRuns: 600, endOnFailure: true },
  );
  expect(inside).toBeGreaterThan(20);
});

test("a hole is not inside, whichever way its ring winds", () => {
  const hole = rectangleRing(2, 2, 4, 4);
  for (const inner of [hole, reversedRing(hole)]) {
    const rings = [rectangleRing(0, 0, 10, 10), inner];
    expect([isInside(rings, 1, 5), isInside(rings, 4, 4), isInside(rings, 11, 5)]).toEqual([true, false, false]);
  }
});

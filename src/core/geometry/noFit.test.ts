import { minkowskiDiff } from "clipper2-ts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { ringBox } from "./box.ts";
import { convexParts } from "./convexParts.ts";
import { isInside } from "./inside.ts";
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

/** A star of whole numbers: simple, its corners by angle. */
const star = fc.array(fc.integer({ min: 20_000, max: 90_000 }), { minLength: 3, maxLength: 7 }).map((reaches) =>
  Float64Array.from(
    reaches.flatMap((reach, i) => {
      const turn = (2 * Math.PI * (i + 0.4)) / reaches.length;
      return [Math.round(reach * Math.cos(turn)), Math.round(reach * Math.sin(turn))];
    }),
  ),
);

test("any two outlines: as large and as wide as the reference library's Minkowski difference", () => {
  const path = (ring: Float64Array) =>
    Array.from({ length: ring.length / 2 }, (_, i) => ({ x: ring[2 * i]!, y: ring[2 * i + 1]! }));
  fc.assert(
    fc.property(star, star, (a, b) => {
      const rings = noFitRings(gridShape(a, []), gridShape(b, []));
      const outer = rings.reduce((one, other) => (signedArea(other) > signedArea(one) ? other : one));
      const [box, boxA, boxB] = [ringBox(outer), ringBox(a), ringBox(b)];
      expect(box).toEqual({
        minX: boxA.minX - boxB.maxX,
        minY: boxA.minY - boxB.maxY,
        maxX: boxA.maxX - boxB.minX,
        maxY: boxA.maxY - boxB.minY,
      });
      // Stars hold their own centre: shifted along a spoke of the other they overlap it.
      for (let i = 0; i < a.length; i += 2)
        for (const share of [0.013, 0.31, 0.57, 0.83])
          expect(isInside(rings, share * a[i]!, share * a[i + 1]!)).toBe(true);
      const theirs = minkowskiDiff(path(b), path(a), true).map((ring) =>
        Math.abs(signedArea(Float64Array.from(ring.flatMap(({ x, y }) => [x, y])))),
      );
      // Crossings are rounded to the grid: a unit along the outline at most.
      expect(Math.abs(signedArea(outer) - Math.max(...theirs))).toBeLessThan(2 * 8 * 180_000);
    }),
    { numRuns: 60, endOnFailure: true },
  );
});

/** Twice the area of the least convex outline round points: those on its edges, by trying every pair. */
function twiceHull(points: readonly (readonly [number, number])[]): number {
  let twice = 0;
  for (const [ax, ay] of points)
    for (const [bx, by] of points) {
      const sides = points.map(([x, y]) => (bx - ax) * (y - ay) - (by - ay) * (x - ax));
      const along = points.map(
        ([x, y]) => ((bx - ax) * (x - ax) + (by - ay) * (y - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2),
      );
      // An edge from end to end: nothing to its right, nothing on its line beyond it.
      const isEdge = sides.every((side, i) => side > 0 || (side === 0 && along[i]! >= 0 && along[i]! <= 1));
      if ((ax !== bx || ay !== by) && isEdge) twice += ax * by - ay * bx;
    }
  return twice;
}

// Of convex outlines the Minkowski difference is the least convex outline round all differences of their corners.
test("two triangles on a coarse grid: exactly the convex outline round all differences of their corners", () => {
  const at = fc.integer({ min: -4, max: 4 });
  const triangle = fc
    .tuple(at, at, at, at, at, at)
    .map((points) => Float64Array.from(points))
    .filter((ring) => signedArea(ring) > 0);
  fc.assert(
    fc.property(triangle, triangle, (a, b) => {
      const rings = noFitRings(gridShape(a, []), gridShape(b, []));
      const differences = [0, 2, 4].flatMap((i) =>
        [0, 2, 4].map((j) => [a[i]! - b[j]!, a[i + 1]! - b[j + 1]!] as const),
      );
      const each = new Map(differences.map((one) => [one.join(), one]));
      expect(rings.map((ring) => 2 * signedArea(ring))).toEqual([twiceHull([...each.values()])]);
    }),
    { numRuns: 150, endOnFailure: true },
  );
});

test("doubled corners and corners on a straight edge are left out; an outline of nothing else is none", () => {
  const plain = rectangleRing(0, 0, 40, 30);
  const wordy = Float64Array.of(0, 0, 0, 0, 10, 0, 25, 0, 40, 0, 40, 30, 40, 30, 20, 30, 0, 30, 0, 30, 0, 12);
  expect(gridShape(wordy, []).outer).toEqual(plain);
  expect(gridShape(Float64Array.of(20, 0, 40, 0, 40, 30, 0, 30, 0, 0), []).outer).toEqual(
    Float64Array.of(40, 0, 40, 30, 0, 30, 0, 0),
  );
  // A spike out of a straight edge: the corner it stood on goes with it.
  expect(gridShape(Float64Array.of(0, 0, 5, 0, 5, 7, 5, 0, 40, 0, 40, 30, 0, 30), []).outer).toEqual(plain);
  expect(gridShape(Float64Array.of(0, 0, 5, 0, 9, 0, 3, 0), []).outer).toHaveLength(0);
  const slit = Float64Array.of(10, 10, 10, 20, 10, 15);
  expect(gridShape(plain, [slit]).holes).toEqual([]);
  const framed = gridShape(plain, [reversedRing(rectangleRing(10, 10, 5, 5)), slit]);
  expect([framed.holes.length, framed.solidParts.length]).toEqual([1, 1]);
  expect(framed.parts.reduce((sum, part) => sum + signedArea(part), 0)).toBe(1200 - 25);
});

test("a piece goes into a hole as large as its box and no smaller; of two holes into the one it fits", () => {
  const framed = (width: number, height: number) =>
    gridShape(rectangleRing(0, 0, 100, 100), [reversedRing(rectangleRing(20, 20, width, height))]);
  const piece = gridShape(rectangleRing(0, 0, 10, 20), []);
  const holes = (width: number, height: number) =>
    noFitRings(framed(width, height), piece)
      .filter((ring) => signedArea(ring) < 0)
      .map(ringBox);
  expect(holes(12, 23)).toEqual([{ minX: 20, minY: 20, maxX: 22, maxY: 23 }]);
  expect([holes(9, 40), holes(40, 19)]).toEqual([[], []]);
  const two = gridShape(rectangleRing(-10, -10, 200, 100), [
    reversedRing(rectangleRing(0, 0, 60, 30)),
    reversedRing(rectangleRing(100, 0, 12, 80)),
  ]);
  const fits = frameNoFitRings(two, piece)
    .map(ringBox)
    .sort((a, b) => a.minX - b.minX);
  expect(fits).toEqual([
    { minX: 0, minY: 0, maxX: 50, maxY: 10 },
    { minX: 100, minY: 0, maxX: 102, maxY: 60 },
  ]);
  // One hole only: it is walked along a bridge from the frame, however far that is.
  const hole = [0, 10, 30, 0, 70, 0, 70, 60, 30, 60];
  for (let first = 0; first < hole.length; first += 2) {
    const ring = reversedRing(Float64Array.from([...hole.slice(first), ...hole.slice(0, first)]));
    const rings = frameNoFitRings(gridShape(rectangleRing(-300, -250, 600, 700), [ring]), piece);
    expect(rings).toHaveLength(1);
    // From the slope on, 60 less the piece's 20 in height, 70 less its 10 in width.
    expect(ringBox(rings[0]!)).toMatchObject({ maxX: 60, minY: 0, maxY: 40 });
    expect(ringBox(rings[0]!).minX).toBeLessThan(30);
  }
});

import { expect, test } from "vitest";
import { contourBox, flattenContour, poseContour } from "./contourArcs.ts";
import { turnedRound } from "./contourCrossing.ts";
import { contourArea } from "./contourEdgeLengths.ts";
import { circleContour, straightContour } from "./contourShapes.ts";
import { halfContour } from "./halfContour.ts";
import { signedArea } from "./ring.ts";

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

/** Three quarters of a circle round (10, 20), radius 5, and its two radii. */
const PIE = { vertices: Float64Array.of(10, 20, 0, 15, 20, Math.tan((3 * Math.PI) / 8), 10, 15, 0), closed: true };
/** A board with a half-round out on the right and one in on the left. */
const LUGS = {
  vertices: Float64Array.of(0, 0, 0, 20, 0, 0, 20, 5, 1, 20, 15, 0, 20, 20, 0, 0, 20, 0, 0, 15, -1, 0, 5, 0),
  closed: true,
};

/** The slow twin: fine chords, what lies below the line pressed up onto it. */
function areaAbove(ring: readonly (readonly [number, number])[], level: number): number {
  const points = ring.flatMap(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    const on = y > level !== ny > level ? [x + ((level - y) * (nx - x)) / (ny - y), level] : [];
    return [x, Math.max(y, level), ...on];
  });
  return signedArea(Float64Array.from(points));
}

test("the part above a line has the area that fine chords have there, turned any way; none where it is in pieces", () => {
  let [parted, whole] = [0, 0];
  for (const shape of [PIE, LUGS, turnedRound(PIE)])
    for (const turnDeg of [0, 20, 75, 110, 160, 200, 255, 310]) {
      const laid = poseContour(shape, { x: 3, y: 4, turnDeg, mirrored: shape === PIE && turnDeg > 100 });
      const { minY, maxY } = contourBox(laid);
      const points = flattenContour(laid, 1e-3);
      const ring = Array.from({ length: points.length / 2 }, (_, i): [number, number] => [
        points[2 * i]!,
        points[2 * i + 1]!,
      ]);
      for (const share of [-0.05, 0.0912, 0.2371, 0.4813, 0.6407, 0.8119, 0.9377, 1.04]) {
        const level = minY + share * (maxY - minY);
        const crossed = ring.filter(([, y], i) => y > level !== ring[(i + 1) % ring.length]![1] > level).length;
        const half = halfContour(laid, level);
        expect(half === null, `turned ${turnDeg}, ${share} up`).toBe(crossed !== 2);
        if (half === null) {
          whole++;
          continue;
        }
        parted++;
        // Chords within 0.001 mm of arcs 8 π mm long at most.
        expect(Math.abs(contourArea(half) - areaAbove(ring, level))).toBeLessThan(0.03);
        expect([half.vertices[1], half.vertices.at(-2)]).toEqual([level, level]);
        expect(contourBox(half).minY).toBeGreaterThan(level - 1e-9);
      }
    }
  expect(Math.min(parted, whole)).toBeGreaterThan(30);
});

test("a line along an edge or through a corner parts there; one that only touches does not", () => {
  const square = straightContour([0, 0, 10, 0, 10, 10, 0, 10], true);
  expect([...halfContour(square, 4)!.vertices]).toEqual([10, 4, 0, 10, 10, 0, 0, 10, 0, 0, 4, 0]);
  expect(halfContour(square, 10)).toBeNull();
  expect(contourArea(halfContour(square, 0)!)).toBeCloseTo(100, 9);
  const kite = straightContour([0, 0, 10, 5, 0, 20, -10, 5], true);
  expect(contourArea(halfContour(kite, 5)!)).toBeCloseTo(150, 9);
  expect(halfContour(circleContour(0, 0, 5), 5)).toBeNull();
  expect(halfContour(circleContour(0, 0, 5), 6)).toBeNull();
});

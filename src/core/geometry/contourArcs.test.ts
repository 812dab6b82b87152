import { expect, test } from "vitest";
import { contourBox, contourEdges, edgeCircle, flattenContour, poseContour } from "./contourArcs.ts";
import { circleContour, rectangleContour, straightContour } from "./contourShapes.ts";
import { signedArea } from "./ring.ts";

/** A quarter circle of radius 10 about the origin, from (10, 0) to (0, 10), as an open contour. */
const quarter = { vertices: Float64Array.of(10, 0, Math.tan(Math.PI / 8), 0, 10, 0), closed: false };

test("a quarter circle has its centre, radius and sweep", () => {
  const { x, y, radius, start, sweep } = edgeCircle(contourEdges(quarter)[0]!);
  expect(x).toBeCloseTo(0, 12);
  expect(y).toBeCloseTo(0, 12);
  expect(radius).toBeCloseTo(10, 12);
  expect(start).toBeCloseTo(0, 12);
  expect(sweep).toBeCloseTo(Math.PI / 2, 12);
});

test("the box takes in an arc's bulging side but not its absent one", () => {
  expect(contourBox(circleContour(5, -3, 2))).toEqual({ minX: 3, minY: -5, maxX: 7, maxY: -1 });
  const box = contourBox(quarter);
  expect(box.maxX).toBeCloseTo(10, 12);
  expect(box.minX).toBeCloseTo(0, 12);
});

test("chords stay within the tolerance and the end of an open line is kept", () => {
  const points = flattenContour(quarter, 0.01);
  expect([points.at(-2), points.at(-1)]).toEqual([0, 10]);
  for (let i = 0; i + 3 < points.length; i += 2) {
    const mid = Math.hypot((points[i]! + points[i + 2]!) / 2, (points[i + 1]! + points[i + 3]!) / 2);
    expect(10 - mid).toBeLessThanOrEqual(0.01 + 1e-12);
    expect(10 - mid).toBeGreaterThanOrEqual(0);
  }
  expect(signedArea(flattenContour(circleContour(0, 0, 50), 0.001))).toBeCloseTo(Math.PI * 2500, 0);
});

test("a mirrored and turned contour keeps its arcs on the right side", () => {
  const posed = poseContour(quarter, { x: 100, y: 0, turnDeg: 90, mirrored: true });
  const { x, y, radius, sweep } = edgeCircle(contourEdges(posed)[0]!);
  expect([x, y, radius]).toEqual([expect.closeTo(100, 9), expect.closeTo(0, 9), expect.closeTo(10, 9)]);
  expect(sweep).toBeCloseTo(-Math.PI / 2, 12);
  // (10, 0) mirrors to (−10, 0), turns to (0, −10), shifts to (100, −10).
  expect(posed.vertices[0]).toBeCloseTo(100, 12);
  expect(posed.vertices[1]).toBeCloseTo(-10, 12);
});

test("straight shapes keep their corners", () => {
  expect(contourEdges(rectangleContour(0, 0, 3, 2))).toHaveLength(4);
  expect(contourEdges(straightContour([0, 0, 1, 0, 1, 1]))).toHaveLength(2);
  expect(contourBox(rectangleContour(1, 2, 3, 4))).toEqual({ minX: 1, minY: 2, maxX: 4, maxY: 6 });
});

test("an edge that hardly bows is cut into few chords, however large its circle", () => {
  for (const bulge of [5e-324, 1e-300, 7e-81, 1e-17, 1e-9, -1e-6, 1e-4]) {
    const points = flattenContour({ vertices: Float64Array.of(0, 0, bulge, 100, 0, 0), closed: false });
    expect(points.length).toBeLessThanOrEqual(6);
    expect(points[2]).toBeCloseTo(50, 9);
    expect(points[3]).toBeCloseTo(-50 * bulge, 9);
  }
});

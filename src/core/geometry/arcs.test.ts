// Contours with arcs: circles' own figures, and slow twins that walk along them in small steps.
import { expect, test } from "vitest";
import { arcsAlong } from "./biarc.ts";
import type { Contour } from "./contour.ts";
import {
  contourBox,
  contourEdges,
  edgeDirection,
  flattenContour,
  poseContour,
  startBeside,
} from "./contourArcs.ts";
import { contourCrossing, turnedRound } from "./contourCrossing.ts";
import { contourArea, contourLength, edgeLength, pointAlong } from "./contourEdgeLengths.ts";
import { circleContour, rectangleContour, ringContour, segmentContour, straightContour } from "./contourShapes.ts";
import { insertTooth } from "./insertTooth.ts";
import { pointOnContour } from "./pointOnContour.ts";
import { polygonArea } from "./ring.ts";
import { unevenOffset } from "./unevenOffset.ts";

/** Three quarters of a circle round (10, 20), radius 5, and its two radii. */
const PIE: Contour = {
  vertices: Float64Array.of(10, 20, 0, 15, 20, Math.tan((270 * Math.PI) / 180 / 4), 10, 15, 0),
  closed: true,
};
/** A square of 20 with half-rounds, one out and one in, of radius 5. */
const LUGS: Contour = {
  vertices: Float64Array.of(0, 0, 0, 20, 0, 0, 20, 5, 1, 20, 15, 0, 20, 20, 0, 0, 20, 0, 0, 15, -1, 0, 5, 0),
  closed: true,
};

test("lengths and areas of circles and parts of them", () => {
  expect(contourLength(circleContour(3, 4, 7))).toBeCloseTo(14 * Math.PI, 9);
  expect(contourArea(circleContour(3, 4, 7))).toBeCloseTo(49 * Math.PI, 9);
  expect(contourArea(turnedRound(circleContour(3, 4, 7)))).toBeCloseTo(-49 * Math.PI, 9);
  expect(contourLength(PIE)).toBeCloseTo(10 + 7.5 * Math.PI, 9);
  expect(contourArea(PIE)).toBeCloseTo(0.75 * 25 * Math.PI, 9);
  expect(contourLength(LUGS)).toBeCloseTo(40 + 20 + 10 * Math.PI, 9);
  expect(contourArea(LUGS)).toBeCloseTo(400, 9);
  expect(contourLength(rectangleContour(1, 2, 3, 4))).toBe(14);
  expect(contourLength(ringContour(Float64Array.of(0, 0, 3, 0, 3, 4)))).toBe(12);
  expect(contourLength(segmentContour(1, 2, 4, 6))).toBe(5);
  expect(contourLength(straightContour([0, 0, 3, 4, 3, 10]))).toBe(11);
});

test("boxes hold arcs to where they reach and no farther", () => {
  expect(contourBox(PIE)).toEqual({ minX: 5, minY: 15, maxX: 15, maxY: 25 });
  expect(contourBox(LUGS)).toEqual({ minX: 0, minY: 0, maxX: 25, maxY: 20 });
  expect(contourBox(circleContour(-3, 4, 2))).toEqual({ minX: -5, minY: 2, maxX: -1, maxY: 6 });
  for (const turnDeg of [0, 33, 90, 145, 200, 290])
    for (const mirrored of [false, true]) {
      const laid = poseContour(PIE, { x: 7, y: -3, turnDeg, mirrored });
      const points = flattenContour(laid, 1e-7);
      const xs = [...points].filter((_, i) => i % 2 === 0);
      const ys = [...points].filter((_, i) => i % 2 === 1);
      const box = contourBox(laid);
      expect([box.minX, box.maxX]).toEqual([
        expect.closeTo(Math.min(...xs), 5),
        expect.closeTo(Math.max(...xs), 5),
      ]);
      expect([box.minY, box.maxY]).toEqual([
        expect.closeTo(Math.min(...ys), 5),
        expect.closeTo(Math.max(...ys), 5),
      ]);
      expect(Math.abs(contourArea(laid))).toBeCloseTo(0.75 * 25 * Math.PI, 9);
      expect(Math.sign(contourArea(laid))).toBe(mirrored ? -1 : 1);
    }
});

test("chords keep within the tolerance of their arc, are no more than that takes, and at least two", () => {
  for (const tolerance of [0.001, 0.01, 0.3]) {
    const points = flattenContour(circleContour(0, 0, 50), tolerance);
    const count = points.length / 2;
    const sagitta = (n: number) => 50 * (1 - Math.cos(Math.PI / n));
    expect(sagitta(count)).toBeLessThanOrEqual(tolerance);
    expect(sagitta(count - 2)).toBeGreaterThan(tolerance);
    for (let i = 0; i < points.length; i += 2) expect(Math.hypot(points[i]!, points[i + 1]!)).toBeCloseTo(50, 9);
  }
  const open = { vertices: Float64Array.of(0, 0, 1e-9, 10, 0, 0), closed: false };
  expect([...flattenContour(open)]).toEqual([0, 0, expect.closeTo(5, 6), expect.closeTo(0, 6), 10, 0]);
  expect([...flattenContour({ vertices: Float64Array.of(0, 0, 1, 0, 0, 0), closed: false })]).toHaveLength(6);
});

test("along an edge: the point and the way out; at its ends: the way on", () => {
  const edges = contourEdges(LUGS);
  expect(edges).toHaveLength(8);
  expect([...pointAlong(edges[0]!, 7)]).toEqual([7, 0, 0, -1]);
  // Half way round the half-round that bows out, and the one that bows in.
  const half = (5 * Math.PI) / 2;
  const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));
  expect([...pointAlong(edges[2]!, half)]).toEqual(near([25, 10, 1, 0]));
  expect([...pointAlong(edges[6]!, half)]).toEqual(near([5, 10, -1, 0]));
  expect([...edgeDirection(edges[2]!, 0), ...edgeDirection(edges[2]!, 1)]).toEqual(near([1, 0, -1, 0]));
  expect([...edgeDirection(edges[6]!, 0), ...edgeDirection(edges[6]!, 1)]).toEqual(near([1, 0, -1, 0]));
  expect([...edgeDirection(edges[0]!, 1)]).toEqual([1, 0]);
  expect([...startBeside(edges[1]!, [0, 1], 3)]).toEqual([23, 0]);
  expect(edgeLength(edges[2]!)).toBeCloseTo(5 * Math.PI, 9);
  expect([...pointAlong({ x0: 1, y0: 2, x1: 4, y1: 6, bulge: 0 }, 2.5)]).toEqual(near([2.5, 4, 0.8, -0.6]));
});

test("the nearest place on a contour is the nearest of many along it", () => {
  for (const contour of [PIE, LUGS, turnedRound(PIE)]) {
    const edges = contourEdges(contour);
    for (let x = -6.3; x < 30; x += 4.1)
      for (let y = -5.7; y < 30; y += 4.3) {
        let least = Number.POSITIVE_INFINITY;
        for (const edge of edges)
          for (let i = 0; i <= 200; i++) {
            const [px, py] = pointAlong(edge, (edgeLength(edge) * i) / 200);
            least = Math.min(least, Math.hypot(px - x, py - y));
          }
        const { edge, at, distance } = pointOnContour(contour, x, y);
        const [px, py] = pointAlong(edges[edge]!, at);
        expect(Math.hypot(px - x, py - y)).toBeCloseTo(distance, 9);
        expect(distance).toBeLessThanOrEqual(least + 1e-9);
        expect(distance).toBeGreaterThan(least - 0.1);
      }
  }
});

test("an edge of no length is its one point", () => {
  const doubled = straightContour([0, 0, 10, 0, 10, 0, 10, 10], true);
  expect(pointOnContour(doubled, 14, -3)).toEqual({ edge: 0, at: 10, distance: 5 });
  expect(pointOnContour(straightContour([2, 3, 2, 3]), 5, 7)).toEqual({ edge: 0, at: 0, distance: 5 });
});

test("a crossing is told by the contour's own edges; walked the other way a contour stays where it is", () => {
  expect(contourCrossing(LUGS)).toBeNull();
  const caught = {
    vertices: Float64Array.of(0, 0, 0, 20, 0, 0, 20, 10, 1, 20, 12, 0, 0, 12, -3, 0, 10, 0),
    closed: true,
  };
  // Its circle is round (4/3, 11), radius 5/3: it meets the edge before it at 4/3 + 4/3 along.
  expect(contourCrossing(caught)).toEqual({ edges: [3, 4], x: expect.closeTo(8 / 3, 1), y: 12 });
  // A half-round so wide that it comes down through the floor.
  const through = {
    vertices: Float64Array.of(0, 0, 0, 20, 0, 0, 20, 10, 0, 15, 10, -1, 5, 10, 0, 0, 10, 0),
    closed: true,
  };
  expect(contourCrossing(through)).toBeNull();
  const deep = { ...through, vertices: through.vertices.with(11, -3) };
  expect(contourCrossing(deep)?.edges).toEqual([0, 3]);
  const round = turnedRound(PIE);
  expect(contourBox(round)).toEqual(contourBox(PIE));
  expect([...turnedRound(round).vertices]).toEqual([...PIE.vertices].map((v) => expect.closeTo(v, 12)));
});

test("a tooth stands on the edge it is put to, and not where its foot would reach a corner", () => {
  const square = rectangleContour(0, 0, 20, 10);
  const toothed = insertTooth(square, [5, 0], 2, [5, 3])!;
  expect([...toothed.vertices].filter((_, i) => i % 3 !== 2).slice(0, 8)).toEqual([0, 0, 3, 0, 5, 3, 7, 0]);
  expect(contourArea(toothed)).toBeCloseTo(200 - 6, 9);
  expect(contourArea(insertTooth(square, [20, 4], 1, [22, 4])!)).toBeCloseTo(202, 9);
  for (const [x, half] of [
    [2, 2],
    [18, 2],
    [19, 2],
    [1, 2],
  ] as const)
    expect(insertTooth(square, [x, 0], half, [x, 3])).toBeNull();
  expect(insertTooth(square, [2.001, 0], 2, [2, 3])).not.toBeNull();
  expect(insertTooth(square, [5, 0.001], 2, [5, 3])).toBeNull();
  // On arcs: feet lie on the circle, and what is left of it bows as before.
  for (const [x, y, tip] of [
    [25, 10, 22],
    [5, 10, 2],
  ] as const) {
    const on = insertTooth(LUGS, [x, y], 1, [tip, 10])!;
    const bulges = [...on.vertices].filter((_, i) => i % 3 === 2);
    expect(bulges.filter((bulge) => bulge !== 0)).toHaveLength(3);
    const length =
      60 +
      10 * Math.PI -
      2 +
      2 * Math.hypot(5 * Math.sin(0.2), 5 * Math.cos(0.2) - Math.abs(tip - (x > 9 ? 20 : 0)));
    expect(contourLength(on)).toBeCloseTo(length, 9);
    expect(contourBox(on)).toMatchObject({ minX: expect.closeTo(0, 9), minY: 0, maxY: 20 });
  }
  expect(insertTooth(LUGS, [20 + 5 * Math.sin(0.15), 10 - 5 * Math.cos(0.15)], 1, [30, 5])).toBeNull();
  expect(insertTooth(LUGS, [20 + 5 * Math.sin(0.25), 10 - 5 * Math.cos(0.25)], 1, [30, 5])).not.toBeNull();
  expect(insertTooth(LUGS, [20 + 5 * Math.sin(0.15), 10 + 5 * Math.cos(0.15)], 1, [30, 5])).toBeNull();
});

test("bands as wide as each edge says, outward and inward, closed at corners that open", () => {
  const areaOf = (contour: Contour, widths: readonly number[]) =>
    unevenOffset(contour, widths).reduce((sum, polygon) => sum + polygonArea(polygon), 0);
  const square = rectangleContour(0, 0, 100, 50);
  expect(areaOf(square, [0, 0, 0, 0])).toBeCloseTo(5000, 3);
  expect(areaOf(square, [5, 0, 0, 0])).toBeCloseTo(5500, 3);
  expect(areaOf(square, [5, 10, 0, 2])).toBeCloseTo(112 * 55, 3);
  expect(areaOf(square, [-5, -10, 0, -2])).toBeCloseTo(88 * 45, 3);
  expect(areaOf(square, [-30, 0, -30, 0])).toBe(0);
  const corner = straightContour([0, 0, 60, 0, 60, 20, 20, 20, 20, 60, 0, 60], true);
  expect(areaOf(corner, [4, 4, 4, 4, 4, 4])).toBeCloseTo(68 * 28 + 28 * 40, 3);
  expect(areaOf(corner, [-4, -4, -4, -4, -4, -4])).toBeCloseTo(52 * 12 + 12 * 40, 3);
  // Bands of more and of less than 1 mm² over each other in a corner that closes.
  const low = straightContour([0, 0, 60, 0, 60, 20, 20, 20, 20, 22, 0, 22], true);
  expect(areaOf(low, Array(6).fill(0.4) as number[])).toBeCloseTo(60.8 * 20.8 + 20.8 * 2, 3);
  expect(areaOf(circleContour(0, 0, 50), [10, 10])).toBeCloseTo(Math.PI * 3600, -1);
});

test("arcs along a curve: a circle's own, and within the tolerance of others, meeting in one direction", () => {
  const round = (t: number) => ({ x: 9 * Math.cos(t), y: 9 * Math.sin(t), dx: -Math.sin(t), dy: Math.cos(t) });
  const circle = arcsAlong(round, (x, y) => Math.abs(Math.hypot(x, y) - 9), 0, Math.PI / 2, 1e-6);
  expect(circle).toHaveLength(2);
  for (const [x, y, bulge] of circle) {
    expect(Math.hypot(x, y)).toBeCloseTo(9, 9);
    expect(bulge).toBeCloseTo(Math.tan(Math.PI / 16), 9);
  }
  // y = x² / 20 from −10 to 30; the distance from it to first order is the slow twin's.
  const at = (t: number) => {
    const length = Math.hypot(1, t / 10);
    return { x: t, y: (t * t) / 20, dx: 1 / length, dy: t / 10 / length };
  };
  const off = (x: number, y: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let t = x - 2; t <= x + 2; t += 0.01) least = Math.min(least, Math.hypot(t - x, (t * t) / 20 - y));
    return least;
  };
  const counts = [0.5, 0.05].map((tolerance) => {
    const corners = arcsAlong(at, off, -10, 30, tolerance);
    const vertices = Float64Array.from([...corners, [30, 45, 0]].flat());
    const points = flattenContour({ vertices, closed: false }, 0.001);
    for (let i = 0; i < points.length; i += 2)
      expect(off(points[i]!, points[i + 1]!)).toBeLessThan(tolerance * 1.5 + 0.01);
    const edges = contourEdges({ vertices, closed: false });
    for (const [i, edge] of edges.entries()) {
      if (i === 0) continue;
      const [before, after] = [edgeDirection(edges[i - 1]!, 1), edgeDirection(edge, 0)];
      expect(before[0] * after[0] + before[1] * after[1]).toBeCloseTo(1, 9);
    }
    return corners.length;
  });
  expect(counts[0]).toBeLessThan(counts[1]!);
});

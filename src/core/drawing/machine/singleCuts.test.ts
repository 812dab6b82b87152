import { expect, test } from "vitest";
import type { Contour } from "../../geometry/contour.ts";
import { contourEdges, edgeCircle } from "../../geometry/contourArcs.ts";
import { circleContour, rectangleContour, straightContour } from "../../geometry/contourShapes.ts";
import type { Drawing } from "../list/drawing.ts";
import { drawLine } from "../list/items.ts";
import { singleCuts } from "./singleCuts.ts";

const cutsOf = (...contours: Contour[]): Contour[] => {
  const drawing: Drawing = {
    box: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
    items: contours.map((contour) => drawLine("cut", contour)),
  };
  return singleCuts(drawing).items.flatMap((item) => (item.kind === "line" ? [item.contour] : []));
};
const length = (contours: readonly Contour[]): number =>
  contours.flatMap(contourEdges).reduce((sum, edge) => {
    if (edge.bulge === 0) return sum + Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    const { radius, sweep } = edgeCircle(edge);
    return sum + radius * Math.abs(sweep);
  }, 0);

test("an edge that two pieces share is cut once", () => {
  const cuts = cutsOf(rectangleContour(0, 0, 10, 10), rectangleContour(10, 0, 10, 10));
  expect(cuts.map((cut) => cut.closed)).toEqual([true, false]);
  expect(length(cuts)).toBeCloseTo(70, 9);
  expect([...cuts[1]!.vertices]).toEqual([10, 0, 0, 20, 0, 0, 20, 10, 0, 10, 10, 0]);
});

test("a part of an edge is left out where only a part is shared", () => {
  const cuts = cutsOf(rectangleContour(0, 0, 30, 10), rectangleContour(10, 10, 10, 5));
  expect(length(cuts)).toBeCloseTo(80 + 20, 9);
  const wide = cutsOf(rectangleContour(10, 10, 10, 5), rectangleContour(0, 0, 30, 10));
  expect(length(wide)).toBeCloseTo(30 + 70, 9);
});

test("shared arcs are cut once, and an arc over the seam is the same arc", () => {
  expect(length(cutsOf(circleContour(50, 50, 10), circleContour(50, 50, 10)))).toBeCloseTo(20 * Math.PI, 9);
  const half: Contour = { vertices: Float64Array.of(0, -10, 1, 0, 10, 0), closed: false };
  const back: Contour = { vertices: Float64Array.of(0, 10, -1, 0, -10, 0), closed: false };
  expect(cutsOf(half, back)).toHaveLength(1);
});

test("pieces a gap apart keep their closed outlines", () => {
  const cuts = cutsOf(rectangleContour(0, 0, 10, 10), rectangleContour(10.1, 0, 10, 10));
  expect(cuts.every((cut) => cut.closed)).toBe(true);
});

test("slanted shared edges are found whichever way they are walked", () => {
  const lower = straightContour([0, 0, 30, 0, 30, 20], true);
  const upper = straightContour([0, 0, 30, 20, 0, 20], true);
  expect(length(cutsOf(lower, upper))).toBeCloseTo(100 + Math.hypot(30, 20), 9);
});

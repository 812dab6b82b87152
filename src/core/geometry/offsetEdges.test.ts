import { expect, test } from "vitest";
import type { Contour } from "./contour.ts";
import { contourBox, contourEdges, edgeDirection, flattenContour } from "./contourArcs.ts";
import { rectangleContour, straightContour } from "./contourShapes.ts";
import { offsetEdges } from "./offsetEdges.ts";
import { signedArea } from "./ring.ts";
import { shapeContour } from "./shape.ts";

/** The contour moved outward by one width all round. */
function grownBy(contour: Contour, distance: number): Contour {
  const edges = contour.vertices.length / 3;
  return offsetEdges(contour, new Array<number>(edges).fill(distance))!.contour;
}

test("a rectangle grows by the distance on every side and stays one", () => {
  const grown = grownBy(rectangleContour(0, 0, 300, 200), 10);
  expect(grown.vertices.length).toBe(12);
  expect(contourBox(grown)).toEqual({ minX: -10, minY: -10, maxX: 310, maxY: 210 });
});

test("a rounded rectangle keeps its arcs: radius and sides grow by the distance", () => {
  const grown = grownBy(shapeContour({ kind: "rounded", along: 300, across: 200, radius: 40 }), 10);
  const wanted = shapeContour({ kind: "rounded", along: 320, across: 220, radius: 50 });
  expect(grown.vertices.length).toBe(wanted.vertices.length);
  expect(signedArea(flattenContour(grown))).toBeCloseTo(signedArea(flattenContour(wanted)), 6);
  expect([...grown.vertices].filter((_, i) => i % 3 === 2 && grown.vertices[i] !== 0)).toHaveLength(4);
});

test("a half round keeps its arc between mitred corners", () => {
  const half = { vertices: Float64Array.of(0, 0, 0, 100, 0, 1, 0, 0, 0), closed: true };
  expect(grownBy({ vertices: half.vertices.slice(0, 6), closed: true }, 5).vertices.length).toBe(12);
});

test("a dent keeps its distance; a narrow slit closes", () => {
  const dent = grownBy(straightContour([0, 0, 100, 0, 100, 80, 50, 40, 0, 80], true), 5);
  expect(dent.vertices.length).toBe(15);
  const slit = grownBy(straightContour([0, 0, 100, 0, 100, 80, 54, 80, 54, 20, 46, 20, 46, 80, 0, 80], true), 5);
  expect(signedArea(flattenContour(slit))).toBeCloseTo(110 * 90, 3);
});

test("a sharp point is cut off square, and the allowance is kept all round it", () => {
  const grown = grownBy(straightContour([0, 0, 200, 10, 0, 20], true), 10);
  expect(contourBox(grown).maxX).toBeCloseTo(210, 1);
});

test("each edge starts where it is told to, whatever its corners end in", () => {
  const outline = straightContour([3, 5, 203, 15, 23, 65, 13, 45], true);
  const ends = [{ kind: "blunted" }, { kind: "blunted" }, { kind: "mitred" }, { kind: "mitred" }] as const;
  const { contour, starts } = offsetEdges(outline, [10, 6, 8, 7], ends)!;
  expect(contour.vertices.length).toBeGreaterThan(12);
  const [before, after] = [contourEdges(outline), contourEdges(contour)];
  for (const [i, start] of starts!.entries())
    expect(edgeDirection(after[start]!, 0)).toEqual(
      edgeDirection(before[i]!, 0).map((value) => expect.closeTo(value, 9)),
    );
});

test("where the polygon library makes the outline a spike is cut off beyond three distances too", () => {
  const half = 10;
  const long = half / Math.tan(Math.asin(1 / 3.5));
  const outline = [0, 0, 100, 0, 100, 30, 100 + long, 40, 100, 50, 100, 80, 54, 80, 54, 20, 46, 20, 46, 80, 0, 80];
  const grown = grownBy(straightContour(outline, true), 5);
  // Sharp it would reach 3.5 distances out.
  expect(contourBox(grown).maxX).toBeLessThan(100 + long + 2 * 5);
  expect(contourBox(grown).maxX).toBeGreaterThan(100 + long + 5 - 0.01);
});

test("moved in by more than there is, nothing is left; where a neck closes, the larger of two rooms", () => {
  const square = rectangleContour(0, 0, 10, 10);
  expect(offsetEdges(square, [-6, -6, -6, -6])).toBeNull();
  expect(offsetEdges(square, [-6, 0, -6, -1])).toBeNull();
  const rooms = [0, 0, 20, 0, 20, 8, 40, 8, 40, 0, 70, 0, 70, 30, 40, 30, 40, 12, 20, 12, 20, 20, 0, 20];
  for (const order of [rooms, [...rooms.slice(10), ...rooms.slice(0, 10)]]) {
    const inner = offsetEdges(straightContour(order, true), new Array<number>(12).fill(-3))!;
    expect(inner.starts).toBeNull();
    expect(contourBox(inner.contour)).toEqual({
      minX: expect.closeTo(43, 4),
      minY: expect.closeTo(3, 4),
      maxX: expect.closeTo(67, 4),
      maxY: expect.closeTo(27, 4),
    });
  }
});

test("nothing to add leaves the contour as it is; a width that is no number is our bug", () => {
  const contour = rectangleContour(0, 0, 3, 2);
  expect(grownBy(contour, 0)).toBe(contour);
  expect(() => grownBy(contour, Number.NaN)).toThrow(RangeError);
});

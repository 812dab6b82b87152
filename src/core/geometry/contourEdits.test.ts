import { expect, test } from "vitest";
import { contourEdges, edgeCircle } from "./contourArcs.ts";
import { contourArea } from "./contourEdgeLengths.ts";
import {
  addCorner,
  bowEdge,
  cornerAt,
  cornersOf,
  edgePoint,
  moveCorner,
  removeCorner,
  stretchEdge,
} from "./contourEdits.ts";

const square = { closed: true, vertices: Float64Array.of(0, 0, 0, 100, 0, 0, 100, 100, 0, 0, 100, 0) };

test("a new corner lies in the middle of its edge, and taking it away brings the outline back", () => {
  const more = addCorner(square, 1);
  expect(cornersOf(more)[2]).toEqual({ x: 100, y: 50 });
  expect(removeCorner(more, 2)).toEqual(square);
  expect(cornersOf(addCorner(square, 3))[4]).toEqual({ x: 0, y: 50 });
});

test("moving a corner leaves the others; a triangle keeps its corners", () => {
  expect(cornersOf(moveCorner(square, 2, 90, 95))).toEqual([
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 90, y: 95 },
    { x: 0, y: 100 },
  ]);
  const triangle = removeCorner(square, 0);
  expect(removeCorner(triangle, 0)).toBe(triangle);
});

test("a corner is found again after its outline was turned round, and keeps its number when it is nowhere", () => {
  const turned = { closed: true, vertices: Float64Array.of(0, 0, 0, 0, 100, 0, 100, 100, 0, 100, 0, 0) };
  expect(cornerAt(square, { x: 100, y: 0 }, 1)).toBe(1);
  expect(cornerAt(turned, { x: 100, y: 0 }, 1)).toBe(3);
  expect(cornerAt(turned, { x: 55, y: 5 }, 2)).toBe(2);
});

test("a new corner on an arc leaves the line where it was; taking a corner away leaves a straight edge", () => {
  const bowed = bowEdge(square, 1, 30);
  const split = addCorner(bowed, 1, 0.3);
  const [whole, first, second] = [contourEdges(bowed)[1]!, ...contourEdges(split).slice(1, 3)];
  // One circle: the same centre and radius, the sweeps adding up.
  for (const part of [first!, second!]) {
    expect(edgeCircle(part).x).toBeCloseTo(edgeCircle(whole).x, 9);
    expect(edgeCircle(part).radius).toBeCloseTo(edgeCircle(whole).radius, 9);
  }
  expect(edgeCircle(first!).sweep / edgeCircle(whole).sweep).toBeCloseTo(0.3, 9);
  expect(contourArea(split)).toBeCloseTo(contourArea(bowed), 6);
  expect(contourEdges(removeCorner(split, 2))[1]!.bulge).toBe(0);
  expect(contourEdges(removeCorner(bowEdge(square, 3, 10), 0))[2]!.bulge).toBe(0);
});

test("an edge bows out to its right by the rise, at most to half a circle", () => {
  const [x, y] = edgePoint(contourEdges(bowEdge(square, 1, 30))[1]!, 0.5);
  expect([x, y]).toEqual([expect.closeTo(130, 9), expect.closeTo(50, 9)]);
  expect(contourEdges(bowEdge(square, 1, -80))[1]!.bulge).toBe(-1);
  // Segment of a circle, r² (θ − sin θ) / 2, closed formula: half a circle of radius 50 here.
  expect(contourArea(bowEdge(square, 1, 50)) - 10_000).toBeCloseTo((Math.PI * 2500) / 2, 6);
});

test("an edge set to a length takes along what lies as far out: a rectangle stays one", () => {
  const longer = stretchEdge(square, 0, 130);
  expect(cornersOf(longer)).toEqual([
    { x: 0, y: 0 },
    { x: 130, y: 0 },
    { x: 130, y: 100 },
    { x: 0, y: 100 },
  ]);
  expect(cornersOf(stretchEdge(square, 0, 130, true))[0]).toEqual({ x: -30, y: 0 });
  expect(cornersOf(stretchEdge(square, 0, 130, true))[1]).toEqual({ x: 100, y: 0 });
});

import { expect, test } from "vitest";
import { contourBox, contourEdges, edgeCircle, flattenContour } from "./contourArcs.ts";
import { circleContour, rectangleContour, straightContour } from "./contourShapes.ts";
import { kerfContour } from "./kerfContour.ts";
import { signedArea } from "./ring.ts";

const b = Math.SQRT2 - 1;
const rounded = {
  vertices: Float64Array.of(5, 0, 0, 15, 0, b, 20, 5, 0, 20, 5.5, b, 15, 10.5, 0, 5, 10.5, b, 0, 5.5, 0, 0, 5, b),
  closed: true,
};

// Common practice, no source: kerf is centred on the line, so a part is drawn half a kerf larger on every side.
test("a 2 × 4 in part moved out by half of a 0.2 mm kerf is 0.2 mm larger each way", () => {
  const box = contourBox(kerfContour(rectangleContour(0, 0, 101.6, 50.8), 0.1)!);
  expect(box.maxX - box.minX).toBeCloseTo(101.8, 9);
  expect(box.maxY - box.minY).toBeCloseTo(51.0, 9);
});

test("arcs stay arcs about the same centre and smooth joints stay smooth", () => {
  const out = kerfContour(rounded, 1)!;
  expect(contourEdges(out).filter((edge) => edge.bulge !== 0)).toHaveLength(4);
  for (const edge of contourEdges(out)) {
    if (edge.bulge === 0) continue;
    const { radius, sweep } = edgeCircle(edge);
    expect(radius).toBeCloseTo(6, 9);
    expect(sweep).toBeCloseTo(Math.PI / 2, 9);
  }
  const inner = kerfContour(circleContour(3, 4, 10), -2)!;
  expect(edgeCircle(contourEdges(inner)[0]!).radius).toBeCloseTo(8, 9);
});

test("sharp spikes are rounded, notches stay sharp", () => {
  const spike = straightContour([0, 0, 100, 0, 0, 4], true);
  const out = kerfContour(spike, 0.5)!;
  expect(contourEdges(out).some((edge) => edge.bulge !== 0)).toBe(true);
  expect(contourBox(out).maxX).toBeLessThanOrEqual(100.5 + 1e-9);
  const notched = straightContour([0, 0, 20, 0, 20, 10, 12, 10, 10, 4, 8, 10, 0, 10], true);
  const area = signedArea(flattenContour(kerfContour(notched, 0.2)!));
  expect(area).toBeGreaterThan(signedArea(flattenContour(notched)));
});

test("a distance that swallows an edge or an arc is refused", () => {
  expect(kerfContour(rectangleContour(0, 0, 3, 2), -1.1)).toBeNull();
  expect(kerfContour(rounded, -5.5)).toBeNull();
  expect(() => kerfContour(straightContour([0, 0, 1, 0]), 1)).toThrow(RangeError);
});

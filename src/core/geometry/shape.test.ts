import { expect, test } from "vitest";
import { contourBox } from "./contourArcs.ts";
import { contourArea } from "./contourEdgeLengths.ts";
import { polygonArea } from "./ring.ts";
import { shapeContour, shapePolygon } from "./shape.ts";

test("rectangle and rounded rectangle have the size and area they should", () => {
  const box = contourBox(shapeContour({ kind: "rounded", along: 300, across: 200, radius: 50 }));
  expect(box).toEqual({ minX: 0, minY: 0, maxX: 300, maxY: 200 });
  expect(polygonArea(shapePolygon({ kind: "rectangle", along: 300, across: 200 }, 5, 6))).toBe(60_000);
  const rounded = polygonArea(shapePolygon({ kind: "rounded", along: 300, across: 200, radius: 50 }));
  // Four corners less a circle: 60 000 − (4 − π) 50²; chords within 0.01 mm of arcs 100 π mm long.
  const exact = 60_000 - (4 - Math.PI) * 2500;
  expect(rounded).toBeLessThan(exact);
  expect(rounded).toBeGreaterThan(exact - 0.01 * 100 * Math.PI);
});

test("a straight run shorter than its radius stays on either side", () => {
  for (const [along, across] of [
    [100, 300],
    [300, 100],
  ] as const) {
    const shape = { kind: "rounded", along, across, radius: 40 } as const;
    expect(shapeContour(shape).vertices.length).toBe(24);
    expect(contourArea(shapeContour(shape))).toBeCloseTo(30_000 - (4 - Math.PI) * 1600, 6);
  }
});

test("a radius of half the side leaves no repeated point", () => {
  const circle = shapeContour({ kind: "rounded", along: 80, across: 80, radius: 40 });
  expect(circle.vertices.length).toBe(12);
  expect(polygonArea(shapePolygon({ kind: "rounded", along: 80, across: 80, radius: 40 }))).toBeCloseTo(
    Math.PI * 1600,
    -1,
  );
  const slot = shapeContour({ kind: "rounded", along: 120, across: 80, radius: 40 });
  expect(slot.vertices.length).toBe(18);
  expect(contourBox(slot)).toEqual({ minX: 0, minY: 0, maxX: 120, maxY: 80 });
});

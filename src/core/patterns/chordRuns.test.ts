import fc from "fast-check";
import { expect, test } from "vitest";
import type { Contour } from "../geometry/contour.ts";
import { contourEdges, edgeCircle, flattenContour } from "../geometry/contourArcs.ts";
import type { Curve } from "./curve.ts";
import { fitArcs } from "./fitArcs.ts";
import { distanceToRing } from "./nesting.ts";

const TOLERANCE = 0.05;

/** The contour as a program writes it that knows no arcs: strokes from point to point. */
function strokes(contour: Contour, chordError: number): Curve {
  const ring = flattenContour(contour, chordError);
  const parts = Array.from({ length: ring.length / 2 - 1 }, (_, i) => {
    return { kind: "straight" as const, x: ring[2 * i + 2]!, y: ring[2 * i + 3]! };
  });
  return { x: ring[0]!, y: ring[1]!, parts, closed: true };
}

/** A rectangle with a round corner of each radius. */
function roundedOff(w: number, h: number, r: readonly number[]): Contour {
  const q = Math.tan(Math.PI / 8);
  const [a, b, c, d] = r as [number, number, number, number];
  const vertices = [a, 0, 0, w - b, 0, q, w, b, 0, w, h - c, q, w - c, h, 0, d, h, q, 0, h - d, 0, 0, a, q];
  return { vertices: Float64Array.from(vertices), closed: true };
}

test("round corners that were cut into chords come back as arcs of their radius", () => {
  const radius = fc.integer({ min: 8, max: 60 });
  const chord = fc.constantFrom(0.002, 0.01, 0.03, 0.045);
  fc.assert(
    fc.property(fc.tuple(radius, radius, radius, radius), chord, (radii, chordError) => {
      const drawn = roundedOff(260, 180, radii);
      const back = fitArcs(strokes(drawn, chordError), TOLERANCE);
      const arcs = contourEdges(back).filter(({ bulge }) => bulge !== 0);
      expect(contourEdges(back).length).toBeLessThanOrEqual(4 + 3 * 4);
      for (const wanted of radii)
        expect(arcs.some((arc) => Math.abs(edgeCircle(arc).radius - wanted) < 0.02 * wanted + TOLERANCE)).toBe(
          true,
        );
      const ring = flattenContour(back, 0.002);
      for (let i = 0; i < ring.length; i += 2)
        expect(distanceToRing(flattenContour(drawn, 0.002), ring[i]!, ring[i + 1]!)).toBeLessThan(2 * TOLERANCE);
    }),
    { numRuns: 40 },
  );
});

test("a circle of many chords is two or three arcs, whichever way round it is drawn", () => {
  for (const way of [1, -1]) {
    const n = 96;
    const point = (i: number) => [
      50 * Math.cos((way * 2 * Math.PI * i) / n),
      50 * Math.sin((way * 2 * Math.PI * i) / n),
    ];
    const parts = Array.from({ length: n }, (_, i) => {
      const [x, y] = point(i + 1);
      return { kind: "straight" as const, x: x!, y: y! };
    });
    const back = fitArcs({ x: 50, y: 0, parts, closed: true }, TOLERANCE);
    expect(contourEdges(back).length).toBeLessThanOrEqual(3);
    for (const edge of contourEdges(back)) expect(edgeCircle(edge).radius).toBeCloseTo(50, 1);
  }
});

test("polygons that were meant stay polygons", () => {
  for (const n of [3, 6, 8, 12]) {
    const parts = Array.from({ length: n - 1 }, (_, i) => {
      const angle = (2 * Math.PI * (i + 1)) / n;
      return { kind: "straight" as const, x: 40 * Math.cos(angle), y: 40 * Math.sin(angle) };
    });
    const back = fitArcs({ x: 40, y: 0, parts, closed: true }, TOLERANCE);
    expect(contourEdges(back).every(({ bulge }) => bulge === 0)).toBe(true);
    expect(contourEdges(back)).toHaveLength(n);
  }
});

import { expect, test } from "vitest";
import { flattenContour } from "../geometry/contourArcs.ts";
import { arcPart, type Curve } from "./curve.ts";
import { fitArcs } from "./fitArcs.ts";
import { flattenCurve } from "./measureCurve.ts";
import { distanceToRing } from "./nesting.ts";

const bezier = (x1: number, y1: number, x2: number, y2: number, x: number, y: number) =>
  ({ kind: "bezier", x1, y1, x2, y2, x, y }) as const;
const closed = (x: number, y: number, ...parts: Curve["parts"]): Curve => ({ x, y, parts, closed: true });

const CURVES: Readonly<Record<string, Curve>> = {
  wave: closed(
    0,
    0,
    bezier(40, 60, 80, -60, 120, 0),
    { kind: "straight", x: 120, y: 90 },
    bezier(80, 120, 40, 40, 0, 90),
  ),
  loop: closed(0, 0, bezier(120, 90, -60, 90, 60, 0)),
  handleless: closed(0, 0, bezier(0, 0, 50, 80, 100, 0)),
  ellipse: closed(
    60,
    0,
    arcPart([0, 0], [60, 0], [0, 20], 0, Math.PI),
    arcPart([0, 0], [60, 0], [0, 20], Math.PI, Math.PI, [60, 0]),
  ),
  leaning: closed(
    60,
    10,
    arcPart([0, 0], [60, 10], [15, 40], 0, 5),
    arcPart([0, 0], [60, 10], [15, 40], 5, 2 * Math.PI - 5, [60, 10]),
  ),
};

test.each(Object.entries(CURVES))("arcs stay within the tolerance of %s, and on both sides of it", (_, curve) => {
  for (const tolerance of [0.5, 0.05, 0.005]) {
    const contour = fitArcs(curve, tolerance);
    const arcs = flattenContour(contour, tolerance / 20);
    const drawn = Float64Array.from(flattenCurve(curve, tolerance / 20));
    for (const [a, b] of [
      [arcs, drawn],
      [drawn, arcs],
    ] as const)
      for (let i = 0; i < a.length; i += 2)
        expect(distanceToRing(b, a[i]!, a[i + 1]!)).toBeLessThan(tolerance * 1.1);
  }
});

test("circles come out exactly as two arcs", () => {
  const half = (from: number, x: number) => arcPart([5, 5], [10, 0], [0, 10], from, Math.PI, [x, 5]);
  const { vertices } = fitArcs(closed(15, 5, half(0, -5), half(Math.PI, 15)), 0.05);
  expect([...vertices]).toEqual([15, 5, expect.closeTo(1, 15), -5, 5, expect.closeTo(1, 15)]);
  const turned = fitArcs(
    { ...closed(15, 5, arcPart([5, 5], [10, 0], [0, -10], 0, Math.PI / 2)), closed: false },
    0.05,
  );
  const expected = [15, 5, -Math.tan(Math.PI / 8), 5, -5, 0];
  for (const [i, value] of expected.entries()) expect(turned.vertices[i]).toBeCloseTo(value, 12);
});

test("a looser tolerance needs fewer arcs", () => {
  const count = (tolerance: number): number => fitArcs(CURVES["ellipse"]!, tolerance).vertices.length / 3;
  expect(count(0.5)).toBeLessThan(count(0.05));
  expect(count(0.05)).toBeLessThanOrEqual(40);
});

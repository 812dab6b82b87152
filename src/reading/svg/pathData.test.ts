import { expect, test } from "vitest";
import { curveArea, curveBox, flattenCurve } from "../../core/patterns/measureCurve.ts";
import { pathData } from "./pathData.ts";

/** Corners of each line of a path, an arc or Bézier by its end. */
function corners(d: string): string[] {
  return pathData(d).curves.map(
    ({ x, y, parts, closed }) =>
      [[x, y], ...parts.map((part) => [part.x, part.y])].join(" ") + (closed ? " z" : ""),
  );
}

// Source of the rules: SVG 2, 9.3 (path data), its grammar in 9.3.9 and error handling in 9.5.4.
test.each([
  ["M1,2L3,4", ["1,2 3,4"]],
  ["M1 2 3 4 5 6", ["1,2 3,4 5,6"]],
  ["m1 2 3 4 5 6z", ["1,2 4,6 9,12 z"]],
  ["M1-2L.5.5", ["1,-2 0.5,0.5"]],
  ["M0 0h5v5H0Z", ["0,0 5,0 5,5 0,5 z"]],
  ["M0,0 h1 2 3", ["0,0 1,0 3,0 6,0"]],
  ["M10 10l5 0zl0 5", ["10,10 15,10 z", "10,10 10,15"]],
  ["M0 0 1e1 0 1E+1 1.0e1", ["0,0 10,0 10,10"]],
  ["M 0 0 L 10 0 M 20 0 L 30 0", ["0,0 10,0", "20,0 30,0"]],
  ["\n\tM0\r0\fL1 1", ["0,0 1,1"]],
  ["M0 0a5 5 0 0110 0", ["0,0 10,0"]],
  ["M0 0a5 5 0 1110 0a5,5,0,0,0,1,1", ["0,0 10,0 11,1"]],
  ["M0 0A5 5 0 0 0 0 0L1 1", ["0,0 1,1"]],
  ["M0 0A0 5 0 0 0 4 0", ["0,0 4,0"]],
  ["M01 02L003 04", ["1,2 3,4"]],
])("%s draws %j", (d, lines) => {
  expect(corners(d)).toEqual(lines);
  expect(pathData(d).brokenAt).toBeNull();
});

test.each([
  ["L1 1", 0, []],
  ["M0 0L1 1 L 2", 12, ["0,0 1,1"]],
  ["M0 0L1 1,", 9, ["0,0 1,1"]],
  ["M0 0L1 1,,2 2", 9, ["0,0 1,1"]],
  ["M0 0L1 1X2 2", 8, ["0,0 1,1"]],
  ["M0 0 1 1 A1 1 0 2 0 5 5", 16, ["0,0 1,1"]],
  ["M0 0L1 1R2 2 3 3", 8, ["0,0 1,1"]],
  ["M0 0 L nan 3", 7, []],
])("%s is drawn up to its fault at %i", (d, at, lines) => {
  expect(pathData(d).brokenAt).toBe(at);
  expect(corners(d)).toEqual(lines);
});

test("smooth handles mirror the handle before, and only one of their own kind", () => {
  const [cubic] = pathData("M0 0C0 10 10 10 10 0S20-10 20 0").curves;
  expect(cubic!.parts[1]).toMatchObject({ x1: 10, y1: -10, x2: 20, y2: -10 });
  const [plain] = pathData("M0 0L10 0S20 10 20 0").curves;
  expect(plain!.parts[1]).toMatchObject({ x1: 10, y1: 0 });
  const [quadratic] = pathData("M0 0Q5 10 10 0T20 0T30 0").curves;
  // Handles (5, 10), (15, -10), (25, 10): a third of the way stands the cubic's.
  const handles = quadratic!.parts.slice(1).flatMap((part) => (part.kind === "bezier" ? [part.x1, part.y1] : []));
  for (const [i, value] of [10 + 10 / 3, -20 / 3, 20 + 10 / 3, 20 / 3].entries())
    expect(handles[i]).toBeCloseTo(value, 12);
});

test("areas and boxes of curves are exact", () => {
  const [circle] = pathData("M10 0A10 10 0 1 1-10 0 10 10 0 1 1 10 0z").curves;
  expect(Math.abs(curveArea(circle!))).toBeCloseTo(100 * Math.PI, 9);
  expect(curveBox(circle!)).toEqual({ minX: -10, minY: -10, maxX: 10, maxY: 10 });
  // Radii too small for their chord grow to a half circle: SVG 2, B.2.5.
  const [grown] = pathData("M0 0A1 1 0 0 1 20 0z").curves;
  expect(Math.abs(curveArea(grown!))).toBeCloseTo(50 * Math.PI, 9);
  // A parabola's segment has two thirds of its box: Archimedes.
  const [parabola] = pathData("M0 0Q10 20 20 0z").curves;
  expect(Math.abs(curveArea(parabola!))).toBeCloseTo((2 / 3) * 20 * 10, 9);
  expect(curveBox(parabola!).maxY).toBeCloseTo(10, 12);
  const points = flattenCurve(parabola!, 0.001);
  for (let i = 0; i < points.length; i += 2) {
    const t = points[i]! / 20;
    expect(points[i + 1]).toBeCloseTo(40 * t * (1 - t), 9);
  }
});

test("a hundred thousand commands are read in one go", () => {
  const d = `M0 0${"l1 1".repeat(100_000)}`;
  expect(pathData(d).curves[0]!.parts).toHaveLength(100_000);
  expect(pathData(`M0 0 ${"1 1 ".repeat(100_000)}`).curves[0]!.parts).toHaveLength(100_000);
});

import svgpath from "svgpath";
import { expect, test } from "vitest";
import { arcPart, type Curve } from "../../src/core/patterns/curve.ts";
import { flattenCurve } from "../../src/core/patterns/measureCurve.ts";
import { distanceToRing } from "../../src/core/patterns/nesting.ts";
import { pathData } from "../../src/reading/svg/pathData.ts";

/** Points of a path by svgpath (npm, fontello): its own parser, its arcs as Béziers, our sampling of nothing. */
function bySvgpath(d: string): number[] {
  const points: number[] = [];
  let x = 0;
  let y = 0;
  svgpath(d)
    .abs()
    .unshort()
    .unarc()
    .iterate(([command, ...n]) => {
      const numbers = n as number[];
      const [px, py] = [x, y];
      if (command === "H") x = numbers[0]!;
      else if (command === "V") y = numbers[0]!;
      else if (command !== "Z") [x, y] = numbers.slice(-2) as [number, number];
      const handles = [px, py, ...numbers];
      const degree = command === "C" ? 3 : command === "Q" ? 2 : 1;
      for (let i = 1; i <= (degree > 1 ? 60 : 1); i++) {
        const t = degree > 1 ? i / 60 : 1;
        points.push(...(degree > 1 ? casteljau(handles, t) : [x, y]));
      }
    });
  return points;
}

/** A Bézier's point by de Casteljau's construction. */
function casteljau(handles: readonly number[], t: number): number[] {
  if (handles.length === 2) return [...handles];
  const next = [];
  for (let i = 0; i + 3 < handles.length; i += 2)
    next.push(
      handles[i]! + t * (handles[i + 2]! - handles[i]!),
      handles[i + 1]! + t * (handles[i + 3]! - handles[i + 1]!),
    );
  return casteljau(next, t);
}

test.each([
  "M10 10C20 40 60-20 80 30S120 60 130 10",
  "m5 5q20 40 50 10t50 0 50 10t10 3",
  "M0 0A50 30 20 0 1 80 40a30 30 0 1 0-20 20A10 60-30 0 0 20 90",
  "M0 0a5 5 0 01.5-.5c1-2.5.5.5.3.3h10v.5l-3-2e1m1 1 4 4 3-9",
  "M100,200 C100,100 250,100 250,200 S400,300 400,200",
  "M200,300 Q400,50 600,300 T1000,300",
  "M600,350 l 50,-25 a25,25 -30 0,1 50,-25 l 50,-25 a25,50 -30 0,1 50,-25 l 50,-25 a25,75 -30 0,1 50,-25",
])("%s runs as svgpath has it", (d) => {
  const expected = bySvgpath(d);
  const own = pathData(d).curves.map((curve) => Float64Array.from(thereAndBack(flattenCurve(curve, 1e-4, 20_000))));
  for (let i = 0; i < expected.length; i += 2) {
    const least = Math.min(...own.map((points) => distanceToRing(points, expected[i]!, expected[i + 1]!)));
    // Its Béziers stray from an arc by up to 3e-4 of the radius.
    expect(least, `point ${i / 2}`).toBeLessThan(d.toLowerCase().includes("a") ? 0.03 : 2e-4);
  }
});

function thereAndBack(points: readonly number[]): number[] {
  const back = [];
  for (let i = points.length - 2; i >= 0; i -= 2) back.push(points[i]!, points[i + 1]!);
  return [...points, ...back];
}

test("a whole ellipse of our own is as long as svgpath's", () => {
  const curve: Curve = { x: 30, y: 0, parts: [arcPart([0, 0], [30, 0], [0, 10], 0, 2 * Math.PI)], closed: true };
  const length = (points: readonly number[]): number => {
    let sum = 0;
    for (let i = 2; i < points.length; i += 2)
      sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
    return sum;
  };
  const theirs = bySvgpath("M30 0A30 10 0 0 1-30 0A30 10 0 0 1 30 0");
  expect(length([...flattenCurve(curve, 1e-4, 20_000), 30, 0]) / length(theirs)).toBeCloseTo(1, 3);
});

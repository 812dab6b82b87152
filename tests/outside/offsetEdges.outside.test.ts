// Seam allowances of different widths against a polygon library that the program does not use: polyclip-ts (Martínez,
// Rueda & Feito 2009) cuts the half planes inside the moved lines with each other, and unites an outline with a band beside
// every edge and a mitred wedge at every outside corner.
// Equal allowances against Steiner's formula for parallel bodies with mitred corners, and there and back again.
import fc from "fast-check";
import { type Geom, intersection, union } from "polyclip-ts";
import { expect, test } from "vitest";
import type { Contour } from "../../src/core/geometry/contour.ts";
import { flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { contourArea, contourLength } from "../../src/core/geometry/contourEdgeLengths.ts";
import { straightContour } from "../../src/core/geometry/contourShapes.ts";
import { offsetEdges } from "../../src/core/geometry/offsetEdges.ts";
import { signedArea } from "../../src/core/geometry/ring.ts";

type Point = [number, number];

/** A convex polygon: points of an ellipse in order, none too near to the next. */
const convex = fc
  .tuple(
    fc.double({ min: 60, max: 300, noNaN: true }),
    fc.double({ min: 60, max: 300, noNaN: true }),
    fc.array(fc.double({ min: 0.3, max: 1, noNaN: true }), { minLength: 4, maxLength: 9 }),
  )
  .map(([a, b, steps]): Contour => {
    const sum = steps.reduce((all, step) => all + step, 0);
    let turn = 0;
    const points = steps.flatMap((step) => {
      turn += (2 * Math.PI * step) / sum;
      return [a * Math.cos(turn), b * Math.sin(turn)];
    });
    return straightContour(points, true);
  });

/** A star: corners in and out. */
const star = fc.array(fc.double({ min: 80, max: 200, noNaN: true }), { minLength: 5, maxLength: 9 }).map(
  (reaches): Contour =>
    straightContour(
      reaches.flatMap((reach, i) => {
        const turn = (2 * Math.PI * i) / reaches.length;
        return [reach * Math.cos(turn), reach * Math.sin(turn)];
      }),
      true,
    ),
);

const widths = fc.array(fc.constantFrom(0, 3, 6.4, 10, 15), { minLength: 9, maxLength: 9 });

const pointsOf = ({ vertices }: Contour): Point[] =>
  Array.from({ length: vertices.length / 3 }, (_, i) => [vertices[3 * i]!, vertices[3 * i + 1]!]);

/** Area of the outline with its bands and wedges, united by the other library; null where a corner is sharper than a third. */
function united(points: readonly Point[], width: readonly number[]): number | null {
  const n = points.length;
  const parts: Geom[] = [];
  for (let i = 0; i < n; i++) {
    const [before, at, next] = [points[(i + n - 1) % n]!, points[i]!, points[(i + 1) % n]!];
    const [u, v] = [unit(before, at), unit(at, next)];
    const [a, b] = [width[(i + n - 1) % n]!, width[i]!];
    const cross = u[0] * v[1] - u[1] * v[0];
    const first: Point = [at[0] + u[1] * a, at[1] - u[0] * a];
    const last: Point = [at[0] + v[1] * b, at[1] - v[0] * b];
    if (b > 0) parts.push([[at, last, [next[0] + v[1] * b, next[1] - v[0] * b], next]]);
    if (cross <= 1e-9 || a + b === 0) continue;
    // Where the two moved lines meet, by Cramer's rule.
    const t = ((last[0] - first[0]) * v[1] - (last[1] - first[1]) * v[0]) / cross;
    const tip: Point = [first[0] + u[0] * t, first[1] + u[1] * t];
    if (Math.hypot(tip[0] - at[0], tip[1] - at[1]) > 3 * Math.max(a, b)) return null;
    // The tip can lie beside the corner where one side is much narrower: the wedge is then part of a band.
    parts.push([[at, first, tip]], [[at, tip, last]]);
  }
  const whole = union([[...points]], ...parts);
  return Math.max(...whole.map(([outer]) => Math.abs(signedArea(Float64Array.from(outer!.slice(0, -1).flat())))));
}

function unit(from: Point, to: Point): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

/** What lies inside every edge's line once it is moved out: half planes, cut with each other by the other library. */
function betweenLines(points: readonly Point[], width: readonly number[]): number {
  const far = 5000;
  const halves = points.map((at, i): Geom => {
    const u = unit(at, points[(i + 1) % points.length]!);
    const on: Point = [at[0] + u[1] * width[i]!, at[1] - u[0] * width[i]!];
    const end = (t: number, inside: number): Point => [
      on[0] + u[0] * t - u[1] * inside,
      on[1] + u[1] * t + u[0] * inside,
    ];
    return [[end(-far, 0), end(far, 0), end(far, far), end(-far, far)]];
  });
  const whole = intersection(halves[0]!, ...halves.slice(1));
  return Math.abs(signedArea(Float64Array.from(whole[0]![0]!.slice(0, -1).flat())));
}

test("unequal allowances round convex outlines end where the moved lines meet", () => {
  let checked = 0;
  fc.assert(
    fc.property(convex, widths, (contour, all) => {
      const points = pointsOf(contour);
      const width = all.slice(0, points.length);
      const moved = offsetEdges(contour, width)!;
      // Where a corner is blunted or a side is used up, there is another test.
      fc.pre(united(points, width) !== null && moved.starts !== null);
      checked++;
      const area = signedArea(flattenContour(moved.contour));
      expect(Math.abs(area - betweenLines(points, width))).toBeLessThan(1e-3);
    }),
    { numRuns: 150, endOnFailure: true },
  );
  expect(checked).toBeGreaterThan(100);
});

test("equal allowances round any outline are the union of bands and mitred corners", () => {
  fc.assert(
    fc.property(star, fc.constantFrom(2, 5, 9), (contour, width) => {
      const points = pointsOf(contour);
      const wanted = united(
        points,
        points.map(() => width),
      );
      fc.pre(wanted !== null);
      const moved = offsetEdges(
        contour,
        points.map(() => width),
      )!;
      expect(Math.abs(signedArea(flattenContour(moved.contour)) - wanted!)).toBeLessThan(0.05);
    }),
    { numRuns: 100, endOnFailure: true },
  );
});

test("Steiner: a convex outline grown by d has A + P d + d² Σ tan(turn / 2); round corners would have π d²", () => {
  fc.assert(
    fc.property(convex, fc.double({ min: 0.5, max: 20, noNaN: true }), (contour, d) => {
      const points = pointsOf(contour);
      const n = points.length;
      const turns = points.map((at, i) => {
        const u = unit(points[(i + n - 1) % n]!, at);
        const v = unit(at, points[(i + 1) % n]!);
        return Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]);
      });
      fc.pre(turns.every((turn) => Math.cos(turn / 2) * 3 > 1.001));
      const sum = turns.reduce((all, turn) => all + Math.tan(turn / 2), 0);
      const grown = offsetEdges(
        contour,
        points.map(() => d),
      )!.contour;
      const wanted = contourArea(contour) + contourLength(contour) * d + d * d * sum;
      expect(contourArea(grown) / wanted).toBeCloseTo(1, 9);
    }),
    { numRuns: 200, endOnFailure: true },
  );
  // Round corners all the way: a circle, whose parallel body Steiner's own formula has.
  const circle = { vertices: Float64Array.of(-50, 0, 1, 50, 0, 1), closed: true };
  const grown = offsetEdges(circle, [7, 7])!.contour;
  expect(contourArea(grown)).toBeCloseTo(contourArea(circle) + contourLength(circle) * 7 + Math.PI * 49, 9);
});

test("by nothing it is the same; out and in again gives back a convex outline, widths of its own included", () => {
  fc.assert(
    fc.property(convex, widths, (contour, all) => {
      const count = contour.vertices.length / 3;
      expect(
        offsetEdges(
          contour,
          Array.from({ length: count }, () => 0),
        )!.contour,
      ).toBe(contour);
      // Narrow sides first: mitres stay on their own edges.
      const width = all.slice(0, count).map((one) => 5 + one / 5);
      const out = offsetEdges(contour, width)!;
      fc.pre(out.starts !== null && out.contour.vertices.length === contour.vertices.length);
      const back = offsetEdges(
        out.contour,
        width.map((one) => -one),
      )!;
      for (const [i, value] of back.contour.vertices.entries()) expect(value).toBeCloseTo(contour.vertices[i]!, 6);
    }),
    { numRuns: 150, endOnFailure: true },
  );
});

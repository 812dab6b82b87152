import { expect, test } from "vitest";
import type { Contour } from "../../geometry/contour.ts";
import { contourEdges, edgeCircle, flattenContour } from "../../geometry/contourArcs.ts";
import { circleContour, rectangleContour, segmentContour, straightContour } from "../../geometry/contourShapes.ts";
import { seededRng } from "../../lay/search/rng.ts";
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

/** Whether each of some points lies on what is cut. */
const atLeastOnce = (contours: readonly Contour[], probe: readonly [number, number][]): boolean =>
  probe.every(([x, y]) =>
    contours.flatMap(contourEdges).some((edge) => {
      if (edge.bulge !== 0) {
        const { x: cx, y: cy, radius, start, sweep } = edgeCircle(edge);
        if (Math.abs(Math.hypot(x - cx, y - cy) - radius) > 0.006) return false;
        const turned =
          ((((Math.atan2(y - cy, x - cx) - start) * Math.sign(sweep)) % (2 * Math.PI)) + 2 * Math.PI) %
          (2 * Math.PI);
        return turned <= Math.abs(sweep) + 1e-3 || turned > 2 * Math.PI - 1e-3;
      }
      const [dx, dy] = [edge.x1 - edge.x0, edge.y1 - edge.y0];
      const t = Math.min(1, Math.max(0, ((x - edge.x0) * dx + (y - edge.y0) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(x - edge.x0 - t * dx, y - edge.y0 - t * dy) < 0.006;
    }),
  );
const probesOf = (contours: readonly Contour[]): [number, number][] =>
  contours.flatMap((contour) => {
    const flat = flattenContour(contour, 0.0005);
    return Array.from({ length: flat.length / 2 - 1 }, (_, i): [number, number] => {
      const j = 2 * i + 2;
      return [(flat[2 * i]! + flat[j]!) / 2, (flat[2 * i + 1]! + flat[j + 1]!) / 2];
    });
  });

test("what is cut in the end is all that was to be cut, whichever way edges run and wherever arcs begin", () => {
  const arc = (from: number, sweep: number): Contour => ({
    vertices: Float64Array.of(
      50 + 20 * Math.cos(from),
      50 + 20 * Math.sin(from),
      Math.tan(sweep / 4),
      50 + 20 * Math.cos(from + sweep),
      50 + 20 * Math.sin(from + sweep),
      0,
    ),
    closed: false,
  });
  const rng = seededRng(3);
  const angle = () => (rng.below(629) / 100) * (rng.below(2) === 0 ? 1 : -1);
  for (let round = 0; round < 60; round++) {
    const all = Array.from({ length: 5 }, () => arc(angle(), Math.sign(angle()) * (0.3 + rng.below(250) / 100)));
    const cuts = cutsOf(...all);
    expect(atLeastOnce(cuts, probesOf(all)), `round ${round}`).toBe(true);
    // Nothing twice: the circle is 2 π r at most, less what was never asked for.
    const covered = Array.from({ length: 1257 }, (_, i) => i / 200).filter((a) =>
      atLeastOnce(all, [[50 + 20 * Math.cos(a), 50 + 20 * Math.sin(a)]]),
    ).length;
    expect(Math.abs(length(cuts) - (covered / 200) * 20)).toBeLessThan(1.1);
  }
});

test("lines at any slant, overlapping by parts, are cut once each, and stay in the order they are walked", () => {
  const rng = seededRng(5);
  for (let round = 0; round < 60; round++) {
    const slant = (rng.below(360) * Math.PI) / 180;
    const at = (t: number): [number, number] => [50 + t * Math.cos(slant), 50 + t * Math.sin(slant)];
    const ends = Array.from({ length: 6 }, () => [rng.below(40) - 20, rng.below(40) - 20] as const).filter(
      ([a, b]) => a !== b,
    );
    const cuts = cutsOf(...ends.map(([a, b]) => straightContour([...at(a), ...at(b)])));
    const covered = Array.from({ length: 40 }, (_, i) => i - 20).filter((t) =>
      ends.some(([a, b]) => Math.min(a, b) <= t && t + 1 <= Math.max(a, b)),
    ).length;
    expect(length(cuts), `round ${round}`).toBeCloseTo(covered, 6);
    for (const cut of cuts) {
      const [x0, y0, , x1, y1] = cut.vertices;
      const [from, to] = [
        (x0! - 50) * Math.cos(slant) + (y0! - 50) * Math.sin(slant),
        (x1! - 50) * Math.cos(slant) + (y1! - 50) * Math.sin(slant),
      ];
      // Each runs the way that one of those it came from does.
      expect(
        ends.some(
          ([a, b]) =>
            Math.sign(b - a) === Math.sign(to - from) &&
            Math.min(a, b) <= Math.min(from, to) + 1e-6 &&
            Math.max(a, b) >= Math.max(from, to) - 1e-6,
        ),
      ).toBe(true);
    }
  }
});

test("a closed contour opened in its middle goes on over its own first corner; folds are never taken out", () => {
  const [, rest] = cutsOf(rectangleContour(20, 0, 10, 10), straightContour([20, 0, 20, 10, 0, 10, 0, 0], true));
  expect([...rest!.vertices]).toEqual([20, 10, 0, 0, 10, 0, 0, 0, 0, 20, 0, 0]);
  const middle = cutsOf(straightContour([0, 10, 10, 10]), straightContour([0, 0, 10, 0, 10, 10, 0, 10], true));
  expect(middle).toHaveLength(2);
  expect([...middle[1]!.vertices]).toEqual([0, 10, 0, 0, 0, 0, 10, 0, 0, 10, 10, 0]);
  const fold = drawLine("fold", segmentContour(0, 0, 10, 0));
  const cut = drawLine("cut", segmentContour(0, 0, 10, 0));
  const items = [fold, cut, cut, fold];
  expect(singleCuts({ box: { minX: 0, minY: 0, maxX: 1, maxY: 1 }, items }).items).toEqual([fold, cut, fold]);
});

test("lines within five thousandths of a millimetre are one, farther apart they are two", () => {
  const two = (apart: number) => cutsOf(segmentContour(0, 0, 30, 0), segmentContour(0, apart, 30, apart)).length;
  expect([two(0), two(0.004), two(0.02), two(-0.004), two(-0.02)]).toEqual([1, 1, 2, 1, 2]);
  const upright = (apart: number) =>
    cutsOf(segmentContour(0, 0, 0, 30), segmentContour(apart, 30, apart, 0)).length;
  expect([upright(0.004), upright(0.02), upright(-0.004), upright(-0.02)]).toEqual([1, 2, 1, 2]);
  // What is left of a line after that is too short to cut.
  expect(cutsOf(segmentContour(0, 0, 30, 0), segmentContour(0, 0, 30.004, 0))).toHaveLength(1);
  expect(cutsOf(segmentContour(0, 0, 30, 0), segmentContour(0, 0, 30.006, 0))).toHaveLength(2);
  expect(cutsOf(segmentContour(0, 0, 30, 0), segmentContour(-0.006, 0, 30, 0))).toHaveLength(2);
});

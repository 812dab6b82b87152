// Areas against polyclip-ts are in tests/outside/polygons.outside.test.ts; here what comes back, and how exact it is.
import { expect, test } from "vitest";
import { differenceOf, intersectionOf, offsetOf, ringsOf, sharedArea, unionOf, unionOnGrid } from "./clipper.ts";
import { polygonArea, rectangleRing, reversedRing, signedArea } from "./ring.ts";

const round = { kind: "round", tolerance: 0.001 } as const;
const areaOf = (polygons: ReturnType<typeof unionOf>) =>
  polygons.reduce((sum, polygon) => sum + polygonArea(polygon), 0);

test("holes come back with the outside they lie in, islands in holes as outsides of their own", () => {
  for (const mm of [1, 0.005]) {
    const square = (size: number) =>
      rectangleRing(700 - size, 900 - size, 2 * size, 2 * size).map((value) => value * mm);
    const target = unionOf([
      square(50),
      reversedRing(square(40)),
      square(30),
      reversedRing(square(20)),
      square(10),
    ]);
    const rings = target.map(({ outer, holes }) =>
      [signedArea(outer), ...holes.map(signedArea)].map((area) => Math.round(area / mm / mm)),
    );
    expect(rings.sort((a, b) => a[0]! - b[0]!)).toEqual([[400], [3600, -1600], [10_000, -6400]]);
  }
  // Two rings side by side, each with two holes.
  const pair = [0, 500].flatMap((x) => [
    rectangleRing(x, 0, 100, 60),
    reversedRing(rectangleRing(x + 10, 10, 30, 40)),
    reversedRing(rectangleRing(x + 60, 10, 20, 40)),
  ]);
  for (const { outer, holes } of unionOf(pair)) {
    expect(ringsOf({ outer, holes })).toHaveLength(3);
    expect(
      holes
        .map(signedArea)
        .map(Math.round)
        .sort((a, b) => a - b),
    ).toEqual([-1200, -800]);
    for (const hole of holes) expect(Math.abs(hole[0]! - outer[0]!)).toBeLessThan(100);
  }
});

test("what comes back is within 2e-8 of the drawing's size, small or large, near or far", () => {
  for (const size of [0.001, 1, 4000])
    for (const [x, y] of [
      [0, 0],
      [-70 * size, 40 * size],
    ] as const) {
      const points = Array.from({ length: 97 }, (_, i) => (2 * Math.PI * i) / 97).flatMap((turn) => [
        x + (size / 2) * Math.cos(turn),
        y + (size / 2) * Math.sin(turn),
      ]);
      const [{ outer } = { outer: new Float64Array() }] = unionOf([Float64Array.from(points)]);
      expect(outer).toHaveLength(points.length);
      let worst = 0;
      for (let i = 0; i < outer.length; i += 2) {
        let near = Number.POSITIVE_INFINITY;
        for (let k = 0; k < points.length; k += 2)
          near = Math.min(
            near,
            Math.max(Math.abs(outer[i]! - points[k]!), Math.abs(outer[i + 1]! - points[k + 1]!)),
          );
        worst = Math.max(worst, near);
      }
      expect(worst).toBeLessThan(2e-8 * size);
      expect(worst).toBeGreaterThan(0);
    }
});

test("overlap, what is left and what is in both, of frames with holes", () => {
  const frame = [rectangleRing(0, 0, 100, 100), reversedRing(rectangleRing(20, 20, 60, 60))];
  const bar = [rectangleRing(-10, 40, 120, 20)];
  expect(areaOf(differenceOf(frame, bar))).toBeCloseTo(6400 - 2 * 400, 3);
  expect(areaOf(intersectionOf(frame, bar))).toBeCloseTo(800, 3);
  expect(differenceOf(frame, bar)).toHaveLength(2);
  const [a, b] = [
    { outer: frame[0]!, holes: [frame[1]!] },
    { outer: rectangleRing(10, 10, 200, 200), holes: [reversedRing(rectangleRing(30, 30, 5, 5))] },
  ];
  expect(sharedArea(a, b)).toBeCloseTo(90 * 90 - 3600, 3);
  expect([unionOf([]), differenceOf([], bar), offsetOf([], 3, round)]).toEqual([[], [], []]);
});

// Steiner's formula for a convex outline grown by d: A + P d + π d² where corners are round (Schneider, Convex Bodies);
// with mitres each right corner has d² in place of a quarter circle.
test("grown and shrunk: round, mitred, holes the other way, parts that merge or vanish", () => {
  const box = [rectangleRing(300, -200, 80, 50)];
  const grown = areaOf(offsetOf(box, 6, round));
  const exact = 4000 + 260 * 6 + Math.PI * 36;
  expect(exact - grown).toBeGreaterThan(0);
  // No chord lies further inside its arc than the tolerance.
  expect(exact - grown).toBeLessThan(0.001 * 2 * Math.PI * 6);
  expect(areaOf(offsetOf(box, 6, { kind: "round", tolerance: 2 }))).toBeLessThan(exact - 5);
  expect(areaOf(offsetOf(box, 6, { kind: "miter", limit: 3 }))).toBeCloseTo(92 * 62, 3);
  expect(areaOf(offsetOf(box, -6, { kind: "miter", limit: 3 }))).toBeCloseTo(68 * 38, 3);
  expect(areaOf(offsetOf(box, -6, round))).toBeCloseTo(68 * 38, 3);
  expect(offsetOf(box, -25.5, round)).toEqual([]);
  const frame = [rectangleRing(0, 0, 100, 100), reversedRing(rectangleRing(20, 20, 60, 60))];
  expect(areaOf(offsetOf(frame, 5, { kind: "miter", limit: 3 }))).toBeCloseTo(110 * 110 - 50 * 50, 3);
  const pair = [rectangleRing(0, 0, 10, 10), rectangleRing(14, 0, 10, 10)];
  expect(offsetOf(pair, 1.9, round)).toHaveLength(2);
  expect(offsetOf(pair, 2.1, round)).toHaveLength(1);
  // A spike of 10° would reach 11.5 distances out: it is cut where the limit says less, kept where it says more.
  const half = 50 * Math.tan((5 * Math.PI) / 180);
  const spike = [Float64Array.of(0, -half, 50, 0, 0, half)];
  const reach = (limit: number): number =>
    Math.max(...ringsOf(offsetOf(spike, 1, { kind: "miter", limit })[0]!).flatMap((ring) => [...ring]));
  expect(reach(20)).toBeCloseTo(50 + 1 / Math.sin((5 * Math.PI) / 180), 3);
  expect(reach(3)).toBeLessThan(53);
});

test("on whole numbers nothing is rounded, near the end of the range too", () => {
  const far = 40_000_000;
  const rings = unionOnGrid([
    Float64Array.of(far, far, far + 3, far, far + 3, far + 5, far, far + 5),
    Float64Array.of(far + 1, far - 2, far + 2, far - 2, far + 2, far + 7, far + 1, far + 7),
  ]);
  expect(rings).toHaveLength(1);
  expect(signedArea(rings[0]!.map((value) => value - far))).toBe(15 + 9 - 5);
  expect([...rings[0]!].every(Number.isInteger)).toBe(true);
  expect(rings[0]).toHaveLength(24);
});

// Areas common to two outlines against two independent libraries: jsts (a port of the JTS Topology Suite, after
// OGC Simple Features) and polyclip-ts (Martínez, Rueda & Feito 2009).
import fc from "fast-check";
import GeometryFactory from "jsts/org/locationtech/jts/geom/GeometryFactory.js";
import GeoJSONReader from "jsts/org/locationtech/jts/io/GeoJSONReader.js";
import DistanceOp from "jsts/org/locationtech/jts/operation/distance/DistanceOp.js";
import OverlayOp from "jsts/org/locationtech/jts/operation/overlay/OverlayOp.js";
import IsValidOp from "jsts/org/locationtech/jts/operation/valid/IsValidOp.js";
import { intersection } from "polyclip-ts";
import { expect, test } from "vitest";
import { laidOutline } from "../../src/core/lay/check/laidOutline.ts";
import { outlineDistance } from "../../src/core/lay/check/outlineDistance.ts";
import { overlapArea } from "../../src/core/lay/check/overlapArea.ts";

type Point = [number, number];
const AS_DRAWN = { x: 0, y: 0, turnDeg: 0, mirrored: false };

/** A star-shaped outline: any radii at rising angles about a centre; whole numbers make shared edges likely. */
const star = fc
  .record({
    x: fc.integer({ min: -20, max: 20 }),
    y: fc.integer({ min: -20, max: 20 }),
    radii: fc.array(fc.integer({ min: 3, max: 30 }), { minLength: 3, maxLength: 40 }),
    whole: fc.boolean(),
  })
  .map(({ x, y, radii, whole }): Point[] => {
    const points = radii.map((radius, i): Point => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
    return whole && radii.length < 8 ? points.map(([px, py]): Point => [Math.round(px), Math.round(py)]) : points;
  })
  .filter((points) => shoelace(points) > 1 && isSimple(points));

function shoelace(points: readonly Point[]): number {
  return points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length];
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}

function isSimple(points: readonly Point[]): boolean {
  return IsValidOp.isValid(reader.read(geo(points)));
}

const reader = new GeoJSONReader(new GeometryFactory());
const geo = (points: readonly Point[]) => ({ type: "Polygon", coordinates: [[...points, points[0]]] });
const outlineOf = (points: readonly Point[], hole: readonly Point[] = []) =>
  laidOutline(
    { outer: Float64Array.from(points.flat()), holes: hole.length ? [Float64Array.from(hole.flat())] : [] },
    AS_DRAWN,
  );

test("overlap areas agree with jsts and polyclip-ts", () => {
  fc.assert(
    fc.property(star, star, (a, b) => {
      const ours = overlapArea(outlineOf(a), outlineOf(b));
      expect(overlapArea(outlineOf(b), outlineOf(a))).toBeCloseTo(ours, 9);
      const clipped = intersection([a], [b])
        .flatMap(([outer, ...holes]) => [shoelaceAbs(outer), ...holes.map((hole) => -shoelaceAbs(hole))])
        .reduce((sum, area) => sum + area, 0);
      expect(ours).toBeCloseTo(clipped, 6);
      const jts = OverlayOp.intersection(reader.read(geo(a)), reader.read(geo(b))).getArea();
      expect(ours).toBeCloseTo(jts, 6);
    }),
    { numRuns: 150, seed: 11 },
  );
});

const shoelaceAbs = (points: readonly Point[]) => Math.abs(shoelace(points));

test("what lies in a hole is not covered", () => {
  const hole: Point[] = [
    [2, 2],
    [8, 2],
    [8, 8],
    [2, 8],
  ];
  const frame = outlineOf(
    [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ],
    hole,
  );
  expect(frame.area).toBe(64);
  expect(overlapArea(frame, outlineOf(hole))).toBe(0);
  expect(overlapArea(frame, frame)).toBe(64);
});

test("distances between outlines agree with jsts", () => {
  fc.assert(
    fc.property(star, star, fc.integer({ min: -80, max: 80 }), (a, b, shift) => {
      const moved = b.map(([x, y]): Point => [x + shift, y + shift / 3]);
      const jts = DistanceOp.distance(reader.read(geo(a)), reader.read(geo(moved)));
      const ours = outlineDistance(outlineOf(a), outlineOf(moved), 1000);
      // jsts calls an outline inside another 0 apart; the edges may be further.
      if (jts > 0 || overlapArea(outlineOf(a), outlineOf(moved)) === 0) expect(ours).toBeCloseTo(jts, 9);
      if (ours < 10) expect(outlineDistance(outlineOf(a), outlineOf(moved), 10)).toBeCloseTo(ours, 12);
    }),
    { numRuns: 150, seed: 12 },
  );
});

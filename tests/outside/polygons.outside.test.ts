// Polygon booleans and seam allowances against libraries that the program does not use:
// clipper2-ts (offset), polyclip-ts (Martínez, Rueda & Feito 2009: intersection, union, difference).
import { EndType, inflatePathsD, JoinType } from "clipper2-ts";
import fc from "fast-check";
import { difference, type Geom, intersection, union } from "polyclip-ts";
import { expect, test } from "vitest";
import { differenceOf, intersectionOf, sharedArea, unionOf } from "../../src/core/geometry/clipper.ts";
import type { Contour } from "../../src/core/geometry/contour.ts";
import { flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { straightContour } from "../../src/core/geometry/contourShapes.ts";
import { offsetEdges } from "../../src/core/geometry/offsetEdges.ts";
import { type Polygon, polygonArea, type Ring, signedArea, solid } from "../../src/core/geometry/ring.ts";
import { shapeContour } from "../../src/core/geometry/shape.ts";

/** A contour moved outward by one width all round. */
function grownBy(contour: Contour, distance: number): Contour {
  const edges = contour.vertices.length / 3;
  return offsetEdges(contour, new Array<number>(edges).fill(distance))!.contour;
}

/** A star-shaped outline of up to 12 corners round (x, y), in tenths of a millimetre. */
const outline = fc
  .tuple(
    fc.integer({ min: -100, max: 100 }),
    fc.integer({ min: -100, max: 100 }),
    fc.array(fc.integer({ min: 300, max: 2000 }), { minLength: 3, maxLength: 12 }),
  )
  .map(([cx, cy, reaches]) => {
    const points = reaches.flatMap((reach, i) => {
      const angle = (2 * Math.PI * (i + 0.1)) / reaches.length;
      return [
        Math.round(10 * cx + reach * Math.cos(angle)) / 10,
        Math.round(10 * cy + reach * Math.sin(angle)) / 10,
      ];
    });
    return Float64Array.from(points);
  })
  .filter((ring) => signedArea(ring) > 1);

const pairs = (ring: Ring): [number, number][] =>
  Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i]!, ring[2 * i + 1]!]);
const theirs = (geometry: Geom): number =>
  (geometry as [number, number][][][])
    .flat()
    .reduce((sum, ring) => sum + signedArea(Float64Array.from(ring.slice(0, -1).flat())), 0);
const ours = (polygons: readonly Polygon[]): number =>
  polygons.reduce((sum, polygon) => sum + polygonArea(polygon), 0);
const close = (a: number, b: number): void => expect(Math.abs(a - b)).toBeLessThan(0.01 + 1e-5 * Math.abs(b));

test("intersection, union and difference have the areas polyclip-ts finds", () => {
  fc.assert(
    fc.property(outline, outline, (a, b) => {
      const [ga, gb]: [Geom, Geom] = [[pairs(a)], [pairs(b)]];
      close(ours(intersectionOf([a], [b])), theirs(intersection(ga, gb)));
      close(ours(unionOf([a, b])), theirs(union(ga, gb)));
      close(ours(differenceOf([a], [b])), theirs(difference(ga, gb)));
      close(sharedArea(solid(a), solid(b)), theirs(intersection(ga, gb)));
    }),
    { numRuns: 80, endOnFailure: true },
  );
});

/** Area of the outermost outline that clipper2-ts makes: mitred to three times the distance, then cut square. */
function inflated(ring: Ring, distance: number): number {
  const paths = inflatePathsD(
    [pairs(ring).map(([x, y]) => ({ x, y }))],
    distance,
    JoinType.Miter,
    EndType.Polygon,
    3,
    6,
  );
  return Math.max(...paths.map((path) => signedArea(Float64Array.from(path.flatMap(({ x, y }) => [x, y])))));
}

test("seam allowance round straight outlines has the area clipper2-ts finds", () => {
  fc.assert(
    fc.property(outline, fc.integer({ min: 1, max: 250 }), (ring, tenths) => {
      const grown = flattenContour(grownBy(straightContour(ring, true), tenths / 10));
      close(signedArea(grown), inflated(ring, tenths / 10));
    }),
    { numRuns: 120, endOnFailure: true },
  );
});

test("seam allowance round arcs has the area clipper2-ts finds on fine chords", () => {
  const shape = fc
    .tuple(fc.integer({ min: 40, max: 400 }), fc.integer({ min: 40, max: 400 }), fc.integer({ min: 1, max: 100 }))
    .map(([along, across, percent]) => {
      const radius = (Math.min(along, across) * percent) / 200;
      return shapeContour({ kind: "rounded", along, across, radius });
    });
  const bowed = fc.tuple(fc.integer({ min: -9, max: 10 }), fc.integer({ min: -9, max: 10 })).map(([a, b]) => ({
    vertices: Float64Array.of(0, 0, a / 20, 200, 0, 0, 220, 150, b / 20, 0, 140, 0),
    closed: true,
  }));
  fc.assert(
    fc.property(fc.oneof(shape, bowed), fc.integer({ min: 1, max: 25 }), (contour, distance) => {
      const grown = signedArea(flattenContour(grownBy(contour, distance), 1e-4));
      const reference = inflated(flattenContour(contour, 1e-4), distance);
      // A mitre at a sharp corner magnifies how far the first chord turns away from its arc.
      expect(Math.abs(grown - reference)).toBeLessThan(0.05 + 5e-4 * reference);
    }),
    { numRuns: 60, endOnFailure: true },
  );
});

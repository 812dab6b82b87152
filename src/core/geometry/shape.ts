import type { Contour } from "./contour.ts";
import { flattenContour, poseContour } from "./contourArcs.ts";
import { rectangleContour } from "./contourShapes.ts";
import { type Polygon, solid } from "./ring.ts";

/** A shape as a person describes it: mm, `along` in x, `across` in y, lower-left corner of a rectangle at the origin. */
export type Shape =
  | { readonly kind: "rectangle"; readonly along: number; readonly across: number }
  | { readonly kind: "rounded"; readonly along: number; readonly across: number; readonly radius: number }
  | { readonly kind: "outline"; readonly contour: Contour };

/** Bulge of a quarter circle, counter-clockwise: tan(90° / 4). */
const QUARTER = Math.SQRT2 - 1;

/** The shape's outline with its arcs, counter-clockwise. A radius of half a side leaves no straight run there. */
export function shapeContour(shape: Shape): Contour {
  if (shape.kind === "outline") return shape.contour;
  const { along, across } = shape;
  if (shape.kind === "rectangle" || shape.radius === 0) return rectangleContour(0, 0, along, across);
  return roundedContour(along, across, shape.radius);
}

/** The shape as a polygon, arcs flattened to within 0.01 mm, moved by (x, y). */
export function shapePolygon(shape: Shape, x = 0, y = 0): Polygon {
  return solid(flattenContour(poseContour(shapeContour(shape), { x, y, turnDeg: 0, mirrored: false })));
}

function roundedContour(along: number, across: number, radius: number): Contour {
  const right = along - radius;
  const top = across - radius;
  const corners = [
    [radius, 0, 0, right, 0, QUARTER],
    [along, radius, 0, along, top, QUARTER],
    [right, across, 0, radius, across, QUARTER],
    [0, top, 0, 0, radius, QUARTER],
  ];
  // A straight run of no length would be a repeated point: its arc starts where the one before ended.
  const runs = [along > 2 * radius, across > 2 * radius, along > 2 * radius, across > 2 * radius];
  return {
    vertices: Float64Array.from(corners.flatMap((corner, i) => (runs[i] ? corner : corner.slice(3)))),
    closed: true,
  };
}

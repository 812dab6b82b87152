import { z } from "zod";
import type { Contour } from "../../geometry/contour.ts";
import { flattenContour } from "../../geometry/contourArcs.ts";
import { contourCrossing, turnedRound } from "../../geometry/contourCrossing.ts";
import { signedArea } from "../../geometry/ring.ts";
import type { Shape } from "../../geometry/shape.ts";
import type { Flaw } from "../../materials/stock.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import type { LengthRange } from "../../units/parseLength.ts";
import { expected, group, type IssueSink, lengthField, list, named, report } from "./fields.ts";

/** Sizes of things that are cut: a tenth of a millimetre to 100 m. */
export const SIZE: LengthRange = { minMm: 0.1, maxMm: 100_000 };
/** Places on a stock or an outline. */
const PLACE = { minMm: -100_000, maxMm: 100_000 };
/** Two points closer than this are the same point, mm. */
const SAME_POINT = 1e-6;
/** An edge that bows by less is straight, mm: its circle would be too large to reckon with. */
const NO_BOW = 1e-3;
/** Less than this is no area, mm². */
const NO_AREA = 1e-3;
const MOST_POINTS = 2000;

/** A place `[x, y]`, x along the grain. */
function placeField(unit: LengthUnit): z.ZodType<[number, number]> {
  return named(
    "place",
    "A place [along, across] on the cloth, along the lengthwise grain first.",
    z.tuple([lengthField(unit, PLACE), lengthField(unit, PLACE)], expected("place")),
  );
}

/** A corner, and how far the edge after it bows out. */
export function pointField(unit: LengthUnit): z.ZodType<BowPoint> {
  return named(
    "point",
    "A corner [along, across], or [along, across, bow] when the edge after it is an arc that bows out so far.",
    z.tuple(
      [lengthField(unit, PLACE), lengthField(unit, PLACE), lengthField(unit, PLACE).optional()],
      expected("point"),
    ),
  );
}

/** Corners and arcs as a file has them, their points not yet held against each other. */
export function outlineKeys(unit: LengthUnit): {
  kind: z.ZodLiteral<"outline">;
  points: z.ZodArray<z.ZodType<BowPoint>>;
} {
  return { kind: z.literal("outline"), points: list(pointField(unit), 3, MOST_POINTS) };
}

/** A line through points, not held to be simple; bows are to the right of the way the line runs. */
export function openContour(points: readonly BowPoint[], closed: boolean, sink: IssueSink): Contour {
  const contour = closed ? bowedContour(points) : bowedContour(points, 1);
  checkPoints(points, contour, sink, closed);
  return { vertices: contour.vertices, closed };
}

/** The outline of points, counter-clockwise, and whether it was given the other way round. */
export function turnedOutline(
  points: readonly BowPoint[],
  sink: IssueSink,
): { readonly contour: Contour; readonly isTurned: boolean } {
  const contour = readContour(points, sink);
  if (signedArea(flattenContour(contour)) >= 0) return { contour, isTurned: false };
  return { contour: turnedRound(contour), isTurned: true };
}

/** A shape of stock or of a flaw by its `kind`; outlines come out counter-clockwise and simple. */
export function shapeField(unit: LengthUnit): z.ZodType<Shape> {
  const size = lengthField(unit, SIZE);
  const rectangle = group({ kind: z.literal("rectangle"), along: size, across: size });
  const rounded = group({
    kind: z.literal("rounded"),
    along: size,
    across: size,
    radius: lengthField(unit, { minMm: 0, maxMm: SIZE.maxMm }),
  }).transform((shape, context): Shape => {
    const mostMm = Math.min(shape.along, shape.across) / 2;
    if (shape.radius > mostMm)
      report(context, { code: "radius-too-large", radiusMm: shape.radius, mostMm }, ["radius"]);
    return shape;
  });
  const outline = group(outlineKeys(unit)).transform(
    ({ points }, context): Shape => ({ kind: "outline", contour: turnedOutline(points, context).contour }),
  );
  return named(
    "shape",
    "A rectangle, a rectangle with rounded corners, or an outline of corners and arcs.",
    z.discriminatedUnion("kind", [rectangle, rounded, outline], expected("group")),
  );
}

/** A flaw: a shape with its origin at `at` on the stock. */
export function flawField(unit: LengthUnit): z.ZodType<Flaw> {
  const flaw = group({ at: placeField(unit).default([0, 0]), shape: shapeField(unit) });
  return named("flaw", "A place on the cloth that no piece may touch.", flaw).transform(
    ({ at, shape }): Flaw => ({ x: at[0], y: at[1], shape }),
  );
}

/** A point and how far the edge after it bows outward. */
export type BowPoint = readonly [number, number, (number | undefined)?];

function readContour(points: readonly BowPoint[], sink: IssueSink): Contour {
  const contour = bowedContour(points);
  if (checkPoints(points, contour, sink, true)) checkSimple(contour, points.length, sink);
  return contour;
}

/** Whether no point is given twice in a row and no arc is more than half a circle; the first that is, is told. */
function checkPoints(points: readonly BowPoint[], contour: Contour, sink: IssueSink, closed: boolean): boolean {
  const first = closed ? 0 : 1;
  const repeated = points.findIndex((point, i) => i >= first && distance(point, points.at(i - 1)!) < SAME_POINT);
  if (repeated !== -1) {
    const [xMm, yMm] = points[repeated]!;
    report(sink, { code: "outline-repeats-point", point: repeated, xMm, yMm }, ["points", repeated]);
    return false;
  }
  const bulge = points.findIndex((_, i) => Math.abs(contour.vertices[3 * i + 2]!) > 1);
  if (bulge === -1) return true;
  const mostMm = distance(points[bulge]!, points[(bulge + 1) % points.length]!) / 2;
  report(sink, { code: "bow-too-large", bowMm: points[bulge]![2] ?? 0, mostMm }, ["points", bulge]);
  return false;
}

function checkSimple(contour: Contour, points: number, sink: IssueSink): void {
  const area = signedArea(flattenContour(contour));
  const crossing = contourCrossing(contour);
  if (crossing !== null && Math.abs(area) + points > 3) {
    const { edges, x: xMm, y: yMm } = crossing;
    report(sink, { code: "outline-crosses-itself", edges, xMm, yMm }, ["points"]);
  } else if (Math.abs(area) < NO_AREA) report(sink, { code: "outline-no-area", points }, ["points"]);
}

/** Bow → bulge: the arc's height over half of its chord; outward is the same side for either winding once turned. */
function bowedContour(points: readonly BowPoint[], way?: 1): Contour {
  const corners = Float64Array.from(points.flatMap((point) => [point[0], point[1]]));
  // Outward is to the right of an edge that runs counter-clockwise, where a positive bulge lies.
  const side = way ?? (signedArea(corners) < 0 ? -1 : 1);
  const vertices = points.flatMap((point, i) => {
    const chord = distance(point, points[(i + 1) % points.length]!);
    const bow = point[2] ?? 0;
    const isArc = chord > 0 && Math.abs(bow) >= NO_BOW;
    return [point[0], point[1], isArc ? (side * 2 * bow) / chord : 0];
  });
  return { vertices: Float64Array.from(vertices), closed: true };
}

function distance(a: BowPoint, b: BowPoint): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

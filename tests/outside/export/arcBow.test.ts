// Which side an arc bows, told by programs that we did not write: the filled area of half-rounds against π.
// PDFium and resvg everywhere, poppler and librsvg where they are; the DXF by a reader that draws its arcs (npm `dxf`).
import { Helper } from "dxf";
import { expect, test } from "vitest";
import { drawArea, drawLine } from "../../../src/core/drawing/list/items.ts";
import { paperPart } from "../../../src/core/drawing/list/page.ts";
import type { Contour } from "../../../src/core/geometry/contour.ts";
import { dxfText } from "../../../src/export/dxf/dxfText.ts";
import { pagesPdf } from "../../../src/export/pdf/pagesPdf.ts";
import { svgText } from "../../../src/export/svg/svgText.ts";
import { PDF_DRAWERS } from "../../tools/pdfReaders.ts";
import { type Grey, passingFile } from "../../tools/programs.ts";
import { FONTS } from "../../tools/samplePlan.ts";
import { SVG_DRAWERS } from "../../tools/svgReaders.ts";

const [WIDE, HIGH] = [100, 60];
/** A half circle over the right side. */
const HALF_ROUND = (Math.PI * (HIGH / 2) ** 2) / 2;
/** A quarter circle at a corner of 20 mm takes a square less a quarter disc. */
const CORNER = 20 ** 2 * (1 - Math.PI / 4);

/** A rectangle from (10, 10) whose right side is an edge with this bulge, its points counter-clockwise or clockwise. */
function bowed(bulge: number, clockwise = false): Contour {
  const [a, b, c, d] = [
    [10, 10],
    [10 + WIDE, 10],
    [10 + WIDE, 10 + HIGH],
    [10, 10 + HIGH],
  ] as const;
  const corners = clockwise ? [...a, 0, ...d, 0, ...c, bulge, ...b, 0] : [...a, 0, ...b, bulge, ...c, 0, ...d, 0];
  return { vertices: Float64Array.from(corners), closed: true };
}

/** The rectangle with its upper right corner rounded, or cut out round, by a quarter circle. */
function corner(bulge: number): Contour {
  const [x, y] = [10 + WIDE, 10 + HIGH];
  const points = [10, 10, 0, x, 10, 0, x, y - 20, bulge, x - 20, y, 0, 10, y, 0];
  return { vertices: Float64Array.from(points), closed: true };
}

/** tan(90° / 4): the bulge of a quarter circle (DXF reference, group code 42). */
const QUARTER = Math.tan(Math.PI / 8);

// Bulge 1 is a half circle, positive when it turns counter-clockwise (DXF reference, group code 42).
const SHAPES: readonly (readonly [string, Contour, number])[] = [
  ["bowing outward", bowed(1), WIDE * HIGH + HALF_ROUND],
  ["bowing inward", bowed(-1), WIDE * HIGH - HALF_ROUND],
  ["bowing outward, points clockwise", bowed(-1, true), WIDE * HIGH + HALF_ROUND],
  ["bowing inward, points clockwise", bowed(1, true), WIDE * HIGH - HALF_ROUND],
  ["with a rounded corner", corner(QUARTER), WIDE * HIGH - CORNER],
  // The corner cut out round: the square less what lies inside the quarter disc about the corner.
  ["with a corner cut out round", corner(-QUARTER), WIDE * HIGH - (Math.PI / 4) * 20 ** 2],
];

const SHEET = { width: 160, height: 80 };
const drawingOf = (contour: Contour) => ({
  box: { minX: 0, minY: 0, maxX: SHEET.width, maxY: SHEET.height },
  items: [drawArea("ink", [contour])],
});

/** Inked area in pixels, edges by their share of the ink's own darkness. */
function darkness({ data }: Grey): number {
  let sum = 0;
  let ink = 0;
  for (const grey of data) {
    sum += 255 - grey;
    ink = Math.max(ink, 255 - grey);
  }
  return sum / ink;
}

for (const drawer of PDF_DRAWERS)
  test.each(SHAPES)(`PDF by ${drawer.name}: a half-round or corner %s has its area`, async (_, contour, area) => {
    const page = { name: "arc", ...SHEET, parts: [paperPart(drawingOf(contour).items)] };
    const { bytes } = await pagesPdf([page], FONTS, { title: "arc" });
    const { perMm, ...picture } = await drawer.draw(passingFile("arc.pdf", bytes), 1, 150);
    expect(darkness(picture) / (perMm.x * perMm.y) / area).toBeCloseTo(1, 2);
  });

for (const drawer of SVG_DRAWERS)
  test.each(SHAPES)(`SVG by ${drawer.name}: a half-round or corner %s has its area`, async (_, contour, area) => {
    const file = passingFile("arc.svg", svgText(drawingOf(contour)));
    const picture = await drawer.draw(file, 127);
    const found = darkness(picture) / (127 / 25.4) ** 2;
    expect(found / area).toBeCloseTo(1, 2);
  });

test.each(SHAPES)("DXF: a half-round or corner %s has its area", (_, contour, area) => {
  const { box } = drawingOf(contour);
  const { polylines } = new Helper(dxfText({ box, items: [drawLine("cut", contour)] })).toPolylines();
  expect(polylines).toHaveLength(1);
  const { vertices } = polylines[0]!;
  expect(vertices.length).toBeGreaterThan(12);
  let twice = 0;
  vertices.forEach(([x, y], i) => {
    const [nextX, nextY] = vertices[(i + 1) % vertices.length]!;
    twice += x! * nextY! - nextX! * y!;
  });
  expect(Math.abs(twice) / 2 / area).toBeCloseTo(1, 2);
});

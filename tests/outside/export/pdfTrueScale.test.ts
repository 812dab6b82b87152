// Sheets measured by programs we did not write: PDFium and qpdf, and poppler where it is.
import { beforeAll, describe, expect, test } from "vitest";
import { drawLine } from "../../../src/core/drawing/list/items.ts";
import { paperPart } from "../../../src/core/drawing/list/page.ts";
import { CHECK_SIDE, checkSquareSpot, flatLines } from "../../../src/core/drawing/sheets/checkSquare.ts";
import { mapPages } from "../../../src/core/drawing/sheets/mapPage.ts";
import { barePage } from "../../../src/core/drawing/sheets/sheetPage.ts";
import { tilePages } from "../../../src/core/drawing/sheets/tilePages.ts";
import { type Tile, type Tiling, tilePieces } from "../../../src/core/drawing/sheets/tiling.ts";
import { segmentContour } from "../../../src/core/geometry/contourShapes.ts";
import { PAPERS, paperNamed } from "../../../src/core/project/papers.ts";
import { pagesPdf } from "../../../src/export/pdf/pagesPdf.ts";
import { type PagePicture, PDF_DRAWERS, pageSizes, pdfObjects } from "../../tools/pdfReaders.ts";
import { type Grey, lineCentre, passingFile } from "../../tools/programs.ts";
import { FONTS, sampleSheet } from "../../tools/samplePlan.ts";

const DPI = 300;
const MARGIN = 10;
/** What can be measured: a tenth of a millimetre. */
const TENTH = 0.1;
const TITLE = { project: "Quay satchel", material: "Canvas", stock: "", language: "en" as const };
const sheet = sampleSheet();

async function tiledFile(paper: string, correction = { x: 1, y: 1 }): Promise<{ tiling: Tiling; path: string }> {
  const tiling = tilePieces(sheet.copies, {
    paper: paperNamed(paper)!,
    margin: MARGIN,
    overlap: 10,
    orientation: "fewest",
    correction,
  });
  const pages = [...mapPages(sheet, tiling, TITLE), ...tilePages(sheet, tiling, TITLE, "both")];
  const { bytes } = await pagesPdf(pages, FONTS, { title: "Quay satchel" });
  return { tiling, path: passingFile("tiles.pdf", bytes) };
}

/** Position in mm from the lower-left corner of the paper of the line expected near (x, y), crossing the axis. */
function measured(picture: PagePicture, axis: "x" | "y", x: number, y: number): number {
  const { perMm } = picture;
  const [across, down] = [x * perMm.x, picture.height - y * perMm.y];
  // Nothing else is this near to the lines asked for, and a line further off is not found at all.
  const reach = 0.45 * perMm[axis];
  if (axis === "x") return lineCentre(picture, "x", across - reach, across + reach, down) / perMm.x;
  return (picture.height - lineCentre(picture, "y", down - reach, down + reach, across)) / perMm.y;
}

let a4: { tiling: Tiling; path: string };
let letter: { tiling: Tiling; path: string };
beforeAll(async () => {
  a4 = await tiledFile("A4");
  letter = await tiledFile("Letter");
});

test("page boxes are the papers' as PDFium shows them", async () => {
  const pages = PAPERS.map((paper) => ({ name: paper.id, ...paper, parts: [paperPart([])] }));
  const { bytes } = await pagesPdf(pages, FONTS, { title: "papers" });
  const boxes = await pageSizes(passingFile("papers.pdf", bytes));
  expect(boxes).toHaveLength(PAPERS.length);
  PAPERS.forEach((paper, i) => {
    // ISO 216 and ASME Y14.1 sizes, to hundredths of a point (0.0035 mm).
    expect(Math.abs(boxes[i]!.width - (paper.width * 72) / 25.4)).toBeLessThan(0.006);
    expect(Math.abs(boxes[i]!.height - (paper.height * 72) / 25.4)).toBeLessThan(0.006);
  });
});

// ISO 32000-1, 7.7.3.3: one unit of a page is UserUnit / 72 in. Both drawers show such pages that many times too small.
test("a page 12 m long: its unit as qpdf reads it times its box is 12 m, and lines on it are where they belong", async () => {
  const lines = [10, 6000, 11_990].map((x) => drawLine("cut", segmentContour(x, 10, x, 90)));
  const page = { name: "long", width: 12_000, height: 100, parts: [paperPart(lines)] };
  const { bytes } = await pagesPdf([page], FONTS, { title: "long" });
  const path = passingFile("long.pdf", bytes);
  const pages = (await pdfObjects(path)).filter((object) => object["/Type"] === "/Page");
  expect(pages.map((one) => one["/UserUnit"])).toEqual([3]);
  const [, , width] = pages[0]!["/MediaBox"] as number[];
  expect(Math.abs((width! * 3 * 25.4) / 72 - 12_000)).toBeLessThan(0.02);
  for (const drawer of PDF_DRAWERS) {
    // PDFium draws pictures of at most 32,767 dots.
    const { perMm, ...picture } = await drawer.draw(path, 1, drawer.name === "PDFium" ? 200 : DPI);
    const shown = { ...picture, perMm: { x: perMm.x / 3, y: perMm.y / 3 } };
    for (const x of [10, 6000, 11_990])
      expect(Math.abs(measured(shown, "x", x, 50) - x), drawer.name).toBeLessThan(TENTH);
  }
});

test("qpdf finds nothing wrong", async () => {
  for (const { path } of [a4, letter]) expect((await pdfObjects(path)).length).toBeGreaterThan(10);
});

/** Three far-apart tape marks of a tile, where they should be on the paper (mm). */
function knownMarks(tile: Tile): { axis: "x" | "y"; x: number; y: number }[] {
  const { minX, maxX, minY, maxY } = tile.window;
  const firstCm = MARGIN + Math.ceil(minX / 10 + 0.2) * 10 - minX;
  const lastCm = MARGIN + Math.floor(maxX / 10 - 0.2) * 10 - minX;
  const lastInch = MARGIN + Math.floor(maxY / 25.4 - 0.2) * 25.4 - minY;
  return [
    { axis: "x", x: firstCm, y: MARGIN + 0.7 },
    { axis: "x", x: lastCm, y: MARGIN + 0.7 },
    { axis: "y", x: MARGIN + 1.9, y: lastInch },
  ];
}

/** True when a pixel or one beside it is dark. */
function darkNear(picture: Grey, x: number, y: number): boolean {
  for (let dy = -1; dy <= 1; dy++) {
    for (let dx = -1; dx <= 1; dx++) {
      if ((picture.data[(y + dy) * picture.width + x + dx] ?? 255) < 170) return true;
    }
  }
  return false;
}

describe.each(PDF_DRAWERS)("sheets drawn by $name", ({ draw }) => {
  test("the 10 cm and the 2 in test square are true within 0.1 mm each way", async () => {
    for (const { path, tiling } of [a4, letter]) {
      const picture = await draw(path, 1, DPI);
      const top = tiling.height - 35.5;
      const width = (left: number, side: number, y: number): number =>
        measured(picture, "x", left + side, y) - measured(picture, "x", left, y);
      const height = (low: number, side: number, x: number): number =>
        measured(picture, "y", x, low + side) - measured(picture, "y", x, low);
      expect(Math.abs(width(15, 100, top - 25) - 100)).toBeLessThan(TENTH);
      expect(Math.abs(height(top - 100, 100, 105.5) - 100)).toBeLessThan(TENTH);
      expect(Math.abs(width(39.6, 50.8, top - 34) - 50.8)).toBeLessThan(TENTH);
      expect(Math.abs(height(top - 79.4, 50.8, 84) - 50.8)).toBeLessThan(TENTH);
    }
  });

  test("three far-apart marks lie within 0.1 mm of their place in every tile", async () => {
    for (const { path, tiling } of [a4, letter]) {
      expect(tiling.tiles.length).toBeGreaterThan(4);
      for (const [i, tile] of tiling.tiles.entries()) {
        const picture = await draw(path, i + 2, DPI);
        for (const { axis, x, y } of knownMarks(tile)) {
          const found = measured(picture, axis, x, y);
          expect(Math.abs(found - (axis === "x" ? x : y)), `${tile.name} ${axis}`).toBeLessThan(TENTH);
        }
      }
    }
  });

  test("the 2 cm square is true within 0.1 mm each way in every tile", async () => {
    const lines = flatLines(sheet.drawing);
    for (const { path, tiling } of [a4, letter]) {
      for (const [i, tile] of tiling.tiles.entries()) {
        const spot = checkSquareSpot(tile, tiling.overlap, lines)!;
        const [left, low] = [MARGIN + spot.x, MARGIN + spot.y];
        const picture = await draw(path, i + 2, DPI);
        // Off the middle, where the words stand.
        const at = (axis: "x" | "y", x: number, y: number): number => measured(picture, axis, x, y);
        const width = at("x", left + CHECK_SIDE, low + 4) - at("x", left, low + 4);
        const height = at("y", left + 4, low + CHECK_SIDE) - at("y", left + 4, low);
        expect(Math.abs(width - CHECK_SIDE), tile.name).toBeLessThan(TENTH);
        expect(Math.abs(height - CHECK_SIDE), tile.name).toBeLessThan(TENTH);
      }
    }
  });

  test("the tiles put together are the one-sheet drawing within one pixel", async () => {
    const dpi = 150;
    const px = dpi / 25.4;
    const { bytes } = await pagesPdf([barePage(sheet)], FONTS, { title: "sheet" });
    const whole = await draw(passingFile("sheet.pdf", bytes), 1, dpi);
    const { box } = sheet.drawing;
    const seen = new Uint8Array(whole.data.length);
    let compared = 0;
    let wrong = 0;
    for (const [i, tile] of a4.tiling.tiles.entries()) {
      const page = await draw(a4.path, i + 2, dpi);
      const { minX, minY, maxX, maxY } = tile.window;
      // Two pixels inside the window, where both pictures show the drawing and the frame is not in the way.
      const inset = 2 / px;
      for (let py = 0; py < page.height; py++) {
        const y = (page.height - py - 0.5) / page.perMm.y - MARGIN + minY;
        if (y < Math.max(minY, box.minY) + inset || y > Math.min(maxY, box.maxY) - inset) continue;
        for (let qx = 0; qx < page.width; qx++) {
          const x = (qx + 0.5) / page.perMm.x - MARGIN + minX;
          if (x < Math.max(minX, box.minX) + inset || x > Math.min(maxX, box.maxX) - inset) continue;
          const wx = Math.floor((x - box.minX) * whole.perMm.x);
          const wy = Math.floor((box.maxY - y) * whole.perMm.y);
          const at = wy * whole.width + wx;
          seen[at] = 1;
          const onWhole = whole.data[at]! < 90;
          // The sheet's own line of words is dark too and is no part of the drawing.
          const onTile = page.data[py * page.width + qx]! < 90 && y > minY + 8;
          if (onWhole || onTile) compared++;
          if (onWhole && !darkNear(page, qx, py)) wrong++;
          if (onTile && !darkNear(whole, wx, wy)) wrong++;
        }
      }
    }
    expect(compared).toBeGreaterThan(20_000);
    expect(wrong).toBe(0);
    // Every dark pixel of the whole drawing is on some tile; a window's outermost pixels overlap the next tile.
    let lost = 0;
    for (let at = 0; at < seen.length; at++) if (whole.data[at]! < 90 && seen[at] === 0) lost++;
    const edge = 4 * (whole.width + whole.height);
    expect(lost).toBeLessThan(edge);
  });

  test("a printer that shrinks unevenly prints the corrected pages true", async () => {
    // The printer prints 99.2 % across and 100.4 % down the sheet; measured on the file, marks must be off by the inverse.
    const correction = { x: 1 / 0.992, y: 1 / 1.004 };
    const { tiling, path } = await tiledFile("A4", correction);
    const landscape = tiling.width > tiling.height;
    const factor = landscape ? { x: 1.004, y: 0.992 } : { x: 0.992, y: 1.004 };
    for (const [i, tile] of tiling.tiles.slice(0, 3).entries()) {
      const picture = await draw(path, i + 2, DPI);
      const { minX, maxX } = tile.window;
      const first = Math.ceil(minX / 10 + 0.2) * 10;
      const last = Math.floor(maxX / 10 - 0.2) * 10;
      const onPage = (cm: number): number => MARGIN + (cm - minX) / factor.x;
      const found = [first, last].map((cm) => measured(picture, "x", onPage(cm), MARGIN + 0.7));
      expect(Math.abs((found[1]! - found[0]!) * factor.x - (last - first))).toBeLessThan(TENTH);
    }
  });
});

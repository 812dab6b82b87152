import { readFileSync } from "node:fs";
import { PDFDocument, PDFName } from "pdf-lib";
import { expect, test, vi } from "vitest";
import { drawLine, drawText } from "../../core/drawing/list/items.ts";
import { type Page, paperPart } from "../../core/drawing/list/page.ts";
import { circleContour } from "../../core/geometry/contourShapes.ts";
import { pagesPdf } from "./pagesPdf.ts";
import { pathOperators, pdfNumber } from "./paths.ts";

const font = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const fonts = { regular: font("DejaVuSansCondensed"), bold: font("DejaVuSansCondensed-Bold"), fallbacks: [] };
const page = (width: number, height: number): Page => ({
  name: "one",
  width,
  height,
  parts: [paperPart([drawLine("cut", circleContour(50, 50, 20)), drawText("Körper Ωμέγα", 20, 20, 5)])],
});

test("page boxes are exact, and a side over 5.08 m takes a larger user unit", async () => {
  const { bytes } = await pagesPdf([page(210, 297), page(914.4, 12_000)], fonts, { title: "Lay" });
  const doc = await PDFDocument.load(bytes, { updateMetadata: false });
  const [a4, long] = doc.getPages();
  expect(a4!.getSize().width).toBeCloseTo((210 / 25.4) * 72, 9);
  expect(a4!.getSize().height).toBeCloseTo((297 / 25.4) * 72, 9);
  const unit = Number(long!.node.get(PDFName.of("UserUnit"))!.toString());
  expect(unit).toBe(3);
  expect(long!.getSize().height * unit).toBeCloseTo((12_000 / 25.4) * 72, 6);
  expect(long!.getSize().height).toBeLessThanOrEqual(14_400);
});

test("same pages, same bytes", async () => {
  const twice = await Promise.all([0, 1].map(() => pagesPdf([page(210, 297)], fonts, { title: "Lay" })));
  expect(twice[0]!.bytes).toEqual(twice[1]!.bytes);
  expect(twice[0]!.missingGlyphs).toEqual([]);
});

test("many pages are written in one go, without a rest by the clock", async () => {
  vi.useFakeTimers();
  try {
    const { bytes } = await pagesPdf(
      Array.from({ length: 120 }, () => page(210, 297)),
      fonts,
      { title: "Lay" },
    );
    expect(vi.getTimerCount()).toBe(0);
    expect((await PDFDocument.load(bytes, { updateMetadata: false, parseSpeed: Infinity })).getPageCount()).toBe(
      120,
    );
  } finally {
    vi.useRealTimers();
  }
});

test("a character without a glyph is named and stands in the page as its number", async () => {
  const parts = [paperPart([drawText("布 A", 20, 20, 5)])];
  const { missingGlyphs } = await pagesPdf([{ ...page(210, 297), parts }], fonts, { title: "布" });
  expect(missingGlyphs).toEqual(["U+5E03"]);
});

test("numbers have no exponent and an arc's curves end where it ends", () => {
  expect(pdfNumber(1e-9)).toBe("0");
  expect(pdfNumber(0.000000125, 9)).toBe("0.000000125");
  expect(pdfNumber(-0.00001)).toBe("0");
  const operators = pathOperators(circleContour(0, 0, 10))
    .trim()
    .split("\n");
  expect(operators[0]).toBe("-10 0 m");
  expect(operators.at(-2)).toMatch(/ -10 0 c$/u);
  expect(operators.at(-1)).toBe("h");
  expect(operators).toHaveLength(10);
});

test("a file says who made it and what it is called, asks not to be scaled, and has all its pages in order", async () => {
  const pages = Array.from({ length: 3 }, (_, i) => page(100 + i, 200));
  const { bytes } = await pagesPdf(pages, fonts, { title: "Lay\n of canvas" });
  const doc = await PDFDocument.load(bytes, { updateMetadata: false });
  expect([doc.getTitle(), doc.getProducer(), doc.getCreator()]).toEqual([
    "Lay of canvas",
    "Laywright",
    "Laywright",
  ]);
  expect(doc.catalog.getViewerPreferences()?.getPrintScaling()).toBe("None");
  expect(doc.catalog.getViewerPreferences()?.getDisplayDocTitle()).toBe(true);
  expect(doc.getPages().map((one) => Math.round((one.getSize().width * 25.4) / 72))).toEqual([100, 101, 102]);
  expect(doc.getPages()[0]!.node.has(PDFName.of("UserUnit"))).toBe(false);
  expect(doc.catalog.Pages().Count().asNumber()).toBe(3);
});

test("it is told every fifty pages how far the writing is", async () => {
  const told: string[] = [];
  const progress = (done: number, pages: number): void => void told.push(`${done} of ${pages}`);
  const pages = Array.from({ length: 151 }, () => ({ ...page(100, 100), parts: [] }));
  await pagesPdf(pages, fonts, { title: "many", progress });
  expect(told).toEqual(["50 of 151", "100 of 151", "150 of 151"]);
});

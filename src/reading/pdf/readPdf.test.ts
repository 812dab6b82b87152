import { PDFDocument, PDFName, PDFNumber } from "pdf-lib";
import { expect, test } from "vitest";
import { curveArea, curveBox } from "../../core/patterns/measureCurve.ts";
import type { PatternDrawing } from "../../core/patterns/patternDrawing.ts";
import { ReadingEnds } from "../readingEnds.ts";
import { readPdf } from "./readPdf.ts";

const POINT = 25.4 / 72;

interface PageWish {
  readonly content: string;
  readonly size?: readonly [number, number];
  readonly rotate?: number;
  readonly userUnit?: number;
  readonly crop?: readonly [number, number, number, number];
}

/** A PDF made of content streams, sizes in points. */
async function pdf(pages: readonly PageWish[], also: (doc: PDFDocument) => void = () => {}): Promise<Uint8Array> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  for (const { content, size = [200, 100], rotate, userUnit, crop } of pages) {
    const page = doc.addPage([size[0], size[1]]);
    if (rotate) page.node.set(PDFName.of("Rotate"), PDFNumber.of(rotate));
    if (userUnit) page.node.set(PDFName.of("UserUnit"), PDFNumber.of(userUnit));
    if (crop) page.setCropBox(...crop);
    page.node.set(PDFName.of("Contents"), doc.context.register(doc.context.stream(content)));
  }
  also(doc);
  return doc.save({ useObjectStreams: false });
}

async function drawn(content: string, wish: Partial<PageWish> = {}): Promise<PatternDrawing> {
  return readPdf(await pdf([{ content, ...wish }]), {});
}

/** Boxes in points, and areas in square points, rounded to a thousandth. */
function boxes({ lines }: PatternDrawing): number[][] {
  return lines.map(({ curve }) => {
    const { minX, minY, maxX, maxY } = curveBox(curve);
    const box = [minX, minY, maxX, maxY].map((value) => value / POINT);
    return [...box, curve.closed ? Math.abs(curveArea(curve)) / POINT ** 2 : 0].map(
      (v) => Math.round(v * 1000) / 1000 || 0,
    );
  });
}

test("rectangles, curves and transformations lie where they are drawn", async () => {
  const drawing = await drawn(`10 20 30 40 re S q 2 0 0 2 5 5 cm 0 0 m 10 0 l 10 10 l h S Q
    0 0 m 0 10 20 10 20 0 c S q 0 1 -1 0 100 0 cm 10 10 20 5 re s Q
    150 50 m 160 60 l S 20 20 m 30 20 l 30 30 l f`);
  expect(boxes(drawing)).toEqual([
    [10, 20, 40, 60, 1200],
    [5, 5, 25, 25, 200],
    [0, 0, 20, 7.5, 0],
    [85, 10, 90, 30, 100],
    [150, 50, 160, 60, 0],
    [20, 20, 30, 30, 50],
  ]);
  expect(drawing.problems).toEqual([]);
});

test("colours and dashes are told; clips, endings and grounds are no lines", async () => {
  const drawing = await drawn(`1 1 1 rg 0 0 200 100 re f 10 10 50 50 re W n 1 0 0 RG [4 2] 0 d 20 20 10 10 re S
    [] 0 d 0 0 1 RG 5 5 60 60 re S 150 80 5 5 re S 100 10 20 20 re n`);
  expect(boxes(drawing).map((box) => box.slice(0, 4))).toEqual([
    [20, 20, 30, 30],
    [5, 5, 65, 65],
  ]);
  expect(drawing.lines.map(({ color, dash }) => [color, dash.map((length) => Math.round(length / POINT))])).toEqual(
    [
      ["#ff0000", [4, 2]],
      ["#0000ff", []],
    ],
  );
});

test("turned, cropped and enlarged pages are as they are looked at", async () => {
  const at = async (wish: Partial<PageWish>): Promise<number[]> =>
    boxes(await drawn("10 20 30 5 re S", wish))[0]!.slice(0, 4);
  expect(await at({ rotate: 90 })).toEqual([20, 160, 25, 190]);
  expect(await at({ rotate: 180 })).toEqual([160, 75, 190, 80]);
  expect(await at({ rotate: 270 })).toEqual([75, 10, 80, 40]);
  expect(await at({ userUnit: 3 })).toEqual([30, 60, 120, 75]);
  expect(await at({ crop: [5, 10, 100, 80] })).toEqual([5, 10, 35, 15]);
});

test("form objects are drawn through their matrices, layers that are off are not there", async () => {
  const bytes = await pdf(
    [{ content: "q 2 0 0 2 0 0 cm /F Do Q /OC /On BDC 1 1 5 5 re S EMC /OC /Off BDC 50 50 5 5 re S EMC" }],
    (doc) => {
      const { context } = doc;
      const form = context.stream("0 0 10 10 re S", {
        Type: "XObject",
        Subtype: "Form",
        BBox: [0, 0, 50, 50],
        Matrix: [1, 0, 0, 1, 20, 5],
      });
      const group = (name: string) => context.register(context.obj({ Type: "OCG", Name: `(${name})` }));
      const [on, off] = [group("on"), group("off")];
      doc.catalog.set(
        PDFName.of("OCProperties"),
        context.obj({ OCGs: [on, off], D: { Order: [on, off], OFF: [off] } }),
      );
      doc
        .getPage(0)
        .node.set(
          PDFName.of("Resources"),
          context.obj({ XObject: { F: context.register(form) }, Properties: { On: on, Off: off } }),
        );
    },
  );
  const drawing = await readPdf(bytes, {});
  expect(boxes(drawing).map((box) => box.slice(0, 4))).toEqual([
    [40, 10, 60, 30],
    [1, 1, 6, 6],
  ]);
  expect(drawing.problems).toEqual([{ code: "pattern-left-out", path: "", thing: "off-layer", count: 1 }]);
});

test("pages lie beside one another and are told, or as they are asked for by hand", async () => {
  const bytes = await pdf([
    { content: "150 50 m 200 50 l S 10 10 20 20 re S" },
    { content: "0 50 m 30 50 l 30 80 l S" },
    { content: "5 5 m 9 9 l S" },
  ]);
  const beside = await readPdf(bytes, {});
  expect(beside.problems).toEqual([{ code: "pattern-pages-apart", path: "", count: 3 }]);
  expect(beside.lines.map(({ layer }) => layer)).toEqual(["page 1", "page 1", "page 2", "page 3"]);
  const joined = await readPdf(bytes, { pages: [1, 2], sheets: { columns: 2, rows: 1, trim: 10 * POINT } });
  expect(boxes(joined)).toEqual([
    [140, 40, 180, 40, 0],
    [0, 0, 20, 20, 400],
    [180, 40, 200, 70, 0],
  ]);
  await expect(readPdf(bytes, { pages: [4] })).rejects.toThrow(ReadingEnds);
});

test("what is no PDF or is cut short is the file's problem", async () => {
  const bytes = await pdf([{ content: "0 0 10 10 re S" }]);
  for (const broken of [new TextEncoder().encode("%PDF-1.7\nnothing"), bytes.slice(0, 200)])
    await expect(readPdf(broken, {})).rejects.toThrow(ReadingEnds);
});

import { unzlibSync } from "fflate";
import { PDFDocument, PDFRawStream, StandardFonts } from "pdf-lib";
import { expect, test } from "vitest";
import { FILE_TEXTS } from "../../core/words/words.ts";
import { photoSheetPdf } from "./photoSheetPdf.ts";

const MM = 25.4 / 72;

/** The page's operators, a line each. */
async function linesOf(paper: { width: number; height: number }): Promise<{ doc: PDFDocument; lines: string[] }> {
  const doc = await PDFDocument.load(await photoSheetPdf(paper, "en"), { updateMetadata: false });
  const contents = doc.getPage(0).node.Contents();
  const streams =
    contents !== undefined && "size" in contents
      ? contents.asArray().map((one) => doc.context.lookup(one))
      : [contents];
  const text = streams
    .map((one) => (one instanceof PDFRawStream ? new TextDecoder().decode(unzlibSync(one.contents)) : ""))
    .join("\n");
  return { doc, lines: text.split("\n") };
}

// By hand: the rings' middles are 75 mm left and right of the sheet's middle and 110 above and below it (core/patterns).
test("a sheet is exactly its paper, says so, and asks not to be scaled", async () => {
  const { doc } = await linesOf({ width: 210, height: 297 });
  const { width, height } = doc.getPage(0).getSize();
  expect([width * MM, height * MM]).toEqual([expect.closeTo(210, 6), expect.closeTo(297, 6)]);
  expect([doc.getProducer(), doc.getCreator()]).toEqual(["Laywright", "Laywright"]);
  expect(doc.getTitle()).toMatch(/\p{L}/u);
  expect(doc.catalog.getViewerPreferences()?.getPrintScaling()).toBe("None");
  expect(doc.catalog.getViewerPreferences()?.getDisplayDocTitle()).toBe(true);
});

test("the line to hold a ruler to is 100 mm long, level, in the middle, with an upright tick at each end", async () => {
  for (const paper of [
    { width: 210, height: 297 },
    { width: 215.9, height: 279.4 },
  ]) {
    const { lines } = await linesOf(paper);
    const strokes = lines.flatMap((line, i) => {
      const from = /^(\S+) (\S+) m$/u.exec(line);
      const to = /^(\S+) (\S+) l$/u.exec(lines[i + 1] ?? "");
      return from && to ? [[from[1], from[2], to[1], to[2]].map((value) => Number(value) * MM)] : [];
    }) as [number, number, number, number][];
    expect(strokes).toHaveLength(3);
    const [[x0, y0, x1, y1], left, right] = strokes;
    expect(x1 - x0).toBeCloseTo(100, 6);
    expect((x0 + x1) / 2).toBeCloseTo(paper.width / 2, 6);
    expect(y0).toBe(y1);
    for (const [tick, x] of [
      [left!, x0],
      [right!, x1],
    ] as const) {
      expect([tick[0], tick[2]]).toEqual([expect.closeTo(x, 6), expect.closeTo(x, 6)]);
      expect([tick[1], tick[3]]).toEqual([expect.closeTo(y0 - 2, 6), expect.closeTo(y0 + 2, 6)]);
    }
    expect(lines.filter((line) => line.endsWith(" w")).map((line) => Number.parseFloat(line) * MM)).toEqual(
      expect.arrayContaining([expect.closeTo(0.3, 6)]),
    );
  }
});

test("words are centred under and over the line, black, the title largest, no two lines on one another", async () => {
  const paper = { width: 210, height: 297 };
  const { lines } = await linesOf(paper);
  const places = lines.flatMap((line) => {
    const at = /^1 0 0 1 (\S+) (\S+) Tm$/u.exec(line);
    return at ? [[Number(at[1]) * MM, Number(at[2]) * MM]] : [];
  }) as [number, number][];
  const sizes = lines.flatMap((line) => (/ Tf$/u.test(line) ? [Number(/ (\S+) Tf$/u.exec(line)![1])] : []));
  expect(sizes.slice(0, 2)).toEqual([8, 12]);
  expect(new Set(sizes.slice(2))).toEqual(new Set([9]));
  expect(places.length).toBeGreaterThan(3);
  const [measure, title, ...use] = places as [[number, number], [number, number], ...[number, number][]];
  expect(title[1] - measure[1]).toBeCloseTo(10, 6);
  for (const [i, [, y]] of use.entries()) expect(y).toBeCloseTo(use[0]![1] - 5 * i, 6);
  // All on the paper, the words on use lowest.
  for (const [x, y] of places) {
    expect(x).toBeGreaterThan(10);
    expect(x).toBeLessThan(105);
    expect(y).toBeGreaterThan(10);
    expect(y).toBeLessThan(290);
  }
  // Centred by the widths of Helvetica, as pdf-lib has them.
  const texts = FILE_TEXTS.en.photoSheet;
  const font = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica);
  const wide = (text: string, size: number) => font.widthOfTextAtSize(text, size) * MM;
  expect(measure[0] + wide(texts.measure, 8) / 2).toBeCloseTo(105, 4);
  expect(title[0] + wide(texts.title, 12) / 2).toBeCloseTo(105, 4);
  for (const [i, [x]] of use.entries()) expect(x + wide(texts.use[i]!, 9) / 2).toBeCloseTo(105, 4);
  const line = lines.findIndex((one) => / l$/u.test(one));
  const level = Number(/ (\S+) l$/u.exec(lines[line]!)![1]) * MM;
  expect(measure[1] - level).toBeCloseTo(3, 6);
  expect(lines.filter((one) => / rg$/u.test(one)).every((one) => one === "0 0 0 rg" || one === "1 1 1 rg")).toBe(
    true,
  );
});

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawArea, drawLine, drawText } from "../core/drawing/list/items.ts";
import { rectangleContour, segmentContour } from "../core/geometry/contourShapes.ts";
import {
  drawingDxf,
  drawingSvg,
  MOST_DRAWN_TEXTS,
  sentDrawing,
  sentPicture,
  tooManyLetters,
} from "./drawingFiles.ts";
import { openFaces } from "./fonts/faces.ts";

const packaged = (path: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/${path}`, import.meta.url)));

/** Corners a text, of a drawing of so many texts whose letters are drawn. */
async function cornersOf(texts: number): Promise<number> {
  const words = "g8";
  const faces = await openFaces(
    {
      regular: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf"),
      bold: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf"),
      fallbacks: [],
    },
    [words],
  );
  const items = Array.from({ length: texts }, (_, i) => drawText(words, 0, 10 * i, 5, {}));
  const drawing = { box: { minX: 0, minY: 0, maxX: 100, maxY: 10 * texts }, items };
  const output = { letters: "outlines", lines: {} } as Parameters<typeof drawingDxf>[1];
  return drawingDxf(drawing, output, faces).split("VERTEX").length / texts;
}

test("letters of more than three hundred texts are drawn with less than half the corners", async () => {
  const few = await cornersOf(300);
  const many = await cornersOf(301);
  expect(few).toBeGreaterThan(60);
  expect(many).toBeLessThan(few / 2);
  // Still letters: each of the two has several corners.
  expect(many).toBeGreaterThan(2 * 8);
});

test("letters of more texts than a file can take are written as text, and it is told how many there are", async () => {
  const items = (texts: number) => Array.from({ length: texts }, (_, i) => drawText("g8", 0, 10 * i, 5, {}));
  const drawing = (texts: number) => ({ box: { minX: 0, minY: 0, maxX: 100, maxY: 100 }, items: items(texts) });
  const output = { letters: "outlines", lines: {} } as Parameters<typeof drawingDxf>[1];
  expect(MOST_DRAWN_TEXTS).toBe(3000);
  expect(tooManyLetters(drawing(MOST_DRAWN_TEXTS), output)).toBe(0);
  expect(tooManyLetters(drawing(MOST_DRAWN_TEXTS + 1), output)).toBe(MOST_DRAWN_TEXTS + 1);
  expect(tooManyLetters(drawing(MOST_DRAWN_TEXTS + 1), { ...output, letters: "text" })).toBe(0);
  expect(await cornersOf(MOST_DRAWN_TEXTS + 1)).toBeLessThan(1);
});

const faces = await openFaces(
  {
    regular: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf"),
    bold: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf"),
    fallbacks: [],
  },
  [],
);
const outputOf = (more: object) =>
  ({ letters: "text", sharedEdges: "each", lines: {}, ...more }) as Parameters<typeof drawingDxf>[1];
const PAIR = {
  box: { minX: 0, minY: 0, maxX: 20, maxY: 10 },
  items: [
    drawArea("piece", [rectangleContour(0, 0, 10, 10)]),
    drawLine("cut", rectangleContour(0, 0, 10, 10)),
    drawLine("cut", rectangleContour(10, 0, 10, 10)),
    drawLine("fold", segmentContour(0, 5, 10, 5)),
    drawText("Tab", 5, 5, 2),
    drawText("up", 8, 5, 2, { turnDeg: 90 }),
  ],
};

test("a machine gets shared edges once where that is asked for; a screen sees what files hold, areas always", () => {
  expect(sentDrawing(PAIR, outputOf({}))).toBe(PAIR);
  const once = sentDrawing(PAIR, outputOf({ sharedEdges: "once" })).items.filter(
    (item) => item.kind === "line" && item.role === "cut",
  );
  expect(once.map((item) => item.kind === "line" && item.contour.closed)).toEqual([true, false]);
  const seen = sentPicture(PAIR, outputOf({ lines: { fold: { draw: false }, label: { draw: false } } }));
  expect(seen.items.map((item) => (item.kind === "area" ? "area" : item.role))).toEqual(["area", "cut", "cut"]);
  expect(seen.box).toEqual(PAIR.box);
});

test("SVG has the maker's layers and lines, areas where they are asked for, turned words as letters always", () => {
  const lines = { cut: { layer: "Blade", color: "#ff0000" }, fold: { draw: false }, stitch: undefined };
  const svg = drawingSvg(PAIR, "Lay", outputOf({ lines }), faces, false);
  expect(svg).toContain('<g id="Blade" fill="none" stroke="#ff0000"');
  expect(svg).not.toMatch(/id="(?:fold|areas|cut)"/u);
  expect(svg).toContain("<title>Lay</title>");
  expect(svg.match(/<text/gu)).toHaveLength(1);
  expect(svg).toContain(">Tab</text>");
  expect(drawingSvg(PAIR, "Lay", outputOf({}), faces, true)).toContain('<g id="areas"');
  expect(drawingSvg(PAIR, "Lay", outputOf({ letters: "outlines" }), faces, true)).not.toContain("<text");
});

test("DXF has words as text or as rings of whole micrometres", () => {
  const text = drawingDxf(PAIR, outputOf({}), faces);
  expect(text.split("\r\n").filter((line) => line === "TEXT")).toHaveLength(2);
  const drawn = drawingDxf(PAIR, outputOf({ letters: "outlines", lines: { fold: { draw: false } } }), faces);
  expect(drawn).not.toMatch(/\r\nTEXT\r\n|\r\nFOLD\r\n/u);
  const numbers = drawn.match(/\d+\.\d+/gu)!;
  expect(Math.max(...numbers.map((number) => number.split(".")[1]!.length))).toBe(3);
  const [few, many] = [300, 301].map(
    (count) =>
      drawingDxf(
        { ...PAIR, items: Array.from({ length: count }, () => drawText("g", 0, 0, 5)) },
        outputOf({ letters: "outlines" }),
        faces,
      ).split("VERTEX").length / count,
  );
  expect(many!).toBeLessThan(few! * 0.6);
});

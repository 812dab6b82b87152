import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawText } from "../core/drawing/list/items.ts";
import { drawingDxf, MOST_DRAWN_TEXTS, tooManyLetters } from "./drawingFiles.ts";
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
  expect(tooManyLetters(drawing(MOST_DRAWN_TEXTS), output)).toBe(0);
  expect(tooManyLetters(drawing(MOST_DRAWN_TEXTS + 1), output)).toBe(MOST_DRAWN_TEXTS + 1);
  expect(tooManyLetters(drawing(MOST_DRAWN_TEXTS + 1), { ...output, letters: "text" })).toBe(0);
  expect(await cornersOf(MOST_DRAWN_TEXTS + 1)).toBeLessThan(1);
});

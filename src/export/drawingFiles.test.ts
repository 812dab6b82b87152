import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawText } from "../core/drawing/list/items.ts";
import { drawingDxf } from "./drawingFiles.ts";
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

test("letters of more than a thousand texts are drawn with less than half the corners", async () => {
  const few = await cornersOf(1000);
  const many = await cornersOf(1001);
  expect(few).toBeGreaterThan(60);
  expect(many).toBeLessThan(few / 2);
  // Still letters: each of the two has several corners.
  expect(many).toBeGreaterThan(2 * 8);
});

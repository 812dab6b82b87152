import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import fontkit, { type GlyphRun } from "@pdf-lib/fontkit";
import { expect, test } from "vitest";
import { parsedFont } from "./faces.ts";

const path = createRequire(import.meta.url).resolve("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf");
const file = new Uint8Array(readFileSync(path));

const places = ({ glyphs, positions }: GlyphRun) =>
  glyphs.map(({ id }, i) => [id, positions[i]!.xAdvance, positions[i]!.xOffset, positions[i]!.yOffset]);

/** Pairs that stand closer, ligatures, marks over letters, writing from right to left, signs that are not there. */
const TEXTS = ["", "AVATAR Ty", "office fluff", "e\u0301 n\u0303", "سلام", "שלום", "3 × 12½ mm", "日本"];

test("a font shapes a text as the library does, the first time and the second (reference: @pdf-lib/fontkit)", () => {
  const plain = fontkit.create(file);
  const font = parsedFont(file);
  for (const text of [...TEXTS, ...TEXTS, "x".repeat(200)]) {
    expect(places(font.layout(text)), text).toEqual(places(plain.layout(text)));
    expect(font.layout(text).advanceWidth, text).toBe(plain.layout(text).advanceWidth);
  }
});

test("a text is shaped once, one with features of its own by itself, and no more is remembered than has room", () => {
  const font = parsedFont(file);
  const run = font.layout("Strap");
  expect(font.layout("Strap")).toBe(run);
  expect(font.layout("AVA", { kern: false }).advanceWidth).toBeGreaterThan(font.layout("AVA").advanceWidth);
  for (let i = 0; i < 5000; i++) font.layout(`${i}`);
  const again = font.layout("Strap");
  expect(again).not.toBe(run);
  expect(places(again)).toEqual(places(run));
});

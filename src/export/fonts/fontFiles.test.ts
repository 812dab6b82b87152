import fontkit from "@pdf-lib/fontkit";
import { gzipSync, zlibSync } from "fflate";
import { expect, test } from "vitest";
import { FONTS } from "../../../tests/tools/samplePlan.ts";
import { openFaces } from "./faces.ts";
import { inflated } from "./inflated.ts";
import { fontFile, fontTables, tagOf } from "./sfnt.ts";
import { unpackFont } from "./unpackWoff.ts";

const isSame = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;
const emoji = await FONTS.fallbacks[0]!();

// Packed by fflate, a library that we did not write; random bytes, so that it comes in several pieces.
test("zlib and gzip data is unpacked, other data refused", async () => {
  const plain = Uint8Array.from({ length: 300_000 }, (_, i) => (i * 2654435761) >>> 13);
  expect(isSame(await inflated(zlibSync(plain), "deflate"), plain)).toBe(true);
  expect(isSame(await inflated(gzipSync(plain), "gzip"), plain)).toBe(true);
  expect(await inflated(zlibSync(new Uint8Array(0)), "deflate")).toEqual(new Uint8Array(0));
  await expect(inflated(plain, "gzip")).rejects.toThrow();
});

test("four letters stand for their number, the first highest", () => {
  expect(tagOf("glyf")).toBe(0x676c7966);
  expect(tagOf("OS/2")).toBe(0x4f532f32);
});

// OpenType 1.9, "Organization of an OpenType Font": for 5 tables the search range is 64, its power 2, the rest 16.
test("a font file has its directory, tables at whole words, and comes apart into the same tables", () => {
  const tables = [1, 2, 3, 4, 9].map((length, i) => ({
    tag: tagOf(`tab${i}`),
    sum: 1000 + i,
    data: Uint8Array.from({ length }, (_, k) => 16 * i + k),
  }));
  const file = fontFile(0x00010000, tables);
  const view = new DataView(file.buffer);
  expect([view.getUint32(0), view.getUint16(4), view.getUint16(6), view.getUint16(8), view.getUint16(10)]).toEqual([
    0x00010000, 5, 64, 2, 16,
  ]);
  expect(file.length).toBe(12 + 5 * 16 + 4 + 4 + 4 + 4 + 12);
  const offsets = tables.map((_, i) => view.getUint32(12 + 16 * i + 8));
  expect(offsets).toEqual([92, 96, 100, 104, 108]);
  expect(fontTables(file)).toEqual(tables);
  // Within a larger buffer as well.
  const within = new Uint8Array(file.length + 10);
  within.set(file, 7);
  expect(fontTables(within.subarray(7, 7 + file.length))).toEqual(tables);
});

test("a real font's tables are those that fontkit reads, put together again it is the same font", () => {
  const tables = fontTables(FONTS.regular);
  const known = (
    fontkit.create(FONTS.regular) as unknown as { directory: { tables: Record<string, { length: number }> } }
  ).directory.tables;
  const letters = (tag: number) =>
    String.fromCharCode(tag >>> 24, (tag >> 16) & 255, (tag >> 8) & 255, tag & 255).trim();
  expect(Object.fromEntries(tables.map(({ tag, data }) => [letters(tag), data.length]))).toEqual(
    Object.fromEntries(Object.entries(known).map(([tag, { length }]) => [tag.trim(), length])),
  );
  const again = fontkit.create(fontFile(0x00010000, tables));
  expect(again.layout("Strap").advanceWidth).toBe(fontkit.create(FONTS.regular).layout("Strap").advanceWidth);
});

test("a font is unpacked however it came: as WOFF, as gzip of either, or as it is", async () => {
  const plain = await unpackFont(emoji);
  // WOFF 1.0, section 4: the header tells how long the unpacked file is.
  expect(plain.length).toBe(new DataView(emoji.buffer, emoji.byteOffset).getUint32(16));
  expect(new DataView(plain.buffer).getUint32(0)).toBe(0x00010000);
  const own = fontkit.create(plain).glyphForCodePoint(0x1f45c);
  expect(own.id).toBeGreaterThan(0);
  expect(own.path.toSVG()).toMatch(/^M.*Z$/u);
  expect(isSame(await unpackFont(gzipSync(emoji, { level: 1 })), plain)).toBe(true);
  expect(await unpackFont(FONTS.regular)).toBe(FONTS.regular);
  expect(isSame(await unpackFont(gzipSync(FONTS.regular, { level: 1 })), FONTS.regular)).toBe(true);
  // Too short to be anything.
  const short = Uint8Array.of(0x77, 0x4f, 0x46, 0x46);
  expect(await unpackFont(short)).toBe(short);
  expect(await unpackFont(Uint8Array.of(1, 2))).toEqual(Uint8Array.of(1, 2));
});

test("a fallback is read once, and only for what the fonts before it lack", async () => {
  const read = [0, 0];
  const fallbacks = FONTS.fallbacks.map((font, i) => async () => {
    read[i]!++;
    return font();
  });
  const bytes = { ...FONTS, fallbacks };
  const latin = await openFaces(bytes, ["Shoulder strap", "Körper Ωμέγα"]);
  expect(read).toEqual([0, 0]);
  expect(latin.all.map(({ name }) => name)).toEqual(["F0", "F1"]);
  const bag = await openFaces(bytes, ["Bag 👜", "Bag 👜"]);
  expect(read).toEqual([1, 0]);
  expect(bag.all.map(({ name }) => name)).toEqual(["F0", "F1", "F2"]);
  const parts = (text: string, bold: boolean) =>
    bag.split(text, bold).map(({ face, text: own }) => [face.name, own]);
  expect(parts("A 👜 b", false)).toEqual([
    ["F0", "A "],
    ["F2", "👜"],
    ["F0", " b"],
  ]);
  expect(parts("A 👜", true)).toEqual([
    ["F1", "A "],
    ["F2", "👜"],
  ]);
  // A joiner or variation selector stays with what stands before it and is not told as missing.
  expect(bag.split("👜\ufe0f!", false).map(({ face }) => face.name)).toEqual(["F2", "F0"]);
  expect(bag.missing()).toEqual([]);
  await openFaces(bytes, ["👜"]);
  expect(read).toEqual([1, 0]);
  // What the first fallback has nothing of is looked for in the next; one that has none of it is not taken along.
  const far = await openFaces(bytes, ["帆"]);
  expect(read).toEqual([1, 1]);
  expect(far.all.map(({ name }) => name)).not.toContain("F2");
});

test("a sign that no font has stands as its number, told once, four digits at least", async () => {
  const faces = await openFaces({ ...FONTS, fallbacks: [] }, []);
  expect(faces.split("A布\u{1f45c}布", false).map(({ face, text }) => [face.name, text])).toEqual([
    ["F0", "A[U+5E03][U+1F45C][U+5E03]"],
  ]);
  expect(faces.split("\u0870", true).map(({ text }) => text)).toEqual(["[U+0870]"]);
  expect(faces.missing()).toEqual(["U+0870", "U+1F45C", "U+5E03"]);
  // Joiners ask for no font by themselves.
  let read = 0;
  const fallbacks = [
    async () => {
      read++;
      return emoji;
    },
  ];
  await openFaces({ ...FONTS, fallbacks }, ["a\u200d\u200c\ufe00\ufe0f"]);
  expect(read).toBe(0);
  await openFaces({ ...FONTS, fallbacks }, ["\ufe10"]);
  expect(read).toBe(1);
});

import { zlibSync } from "fflate";
import { expect, test } from "vitest";
import { signedArea } from "../../core/geometry/ring.ts";
import { seededRng } from "../../core/lay/search/rng.ts";
import { PIXEL_SHIFT, unpackPixels } from "./pixelFont.ts";
import { type PixelGlyph, pixelContours } from "./pixelGlyph.ts";
import { fontTables, tagOf } from "./sfnt.ts";

const glyphOf = (left: number, bottom: number, ...rowsFromTop: string[]): PixelGlyph => {
  const width = rowsFromTop[0]?.length ?? 0;
  const filled = Uint8Array.from(
    [...rowsFromTop].reverse().flatMap((row) => [...row].map((sign) => Number(sign === "#"))),
  );
  return { left, bottom, width, height: rowsFromTop.length, filled };
};

/** How often contours go round a place, clockwise counted 1. */
function turnsRound(contours: readonly (readonly number[])[], x: number, y: number): number {
  let turns = 0;
  for (const contour of contours)
    for (let i = 0; i < contour.length; i += 2) {
      const j = (i + 2) % contour.length;
      const [ax, ay, by] = [contour[i]!, contour[i + 1]!, contour[j + 1]!];
      if (ax > x && ax === contour[j] && Math.min(ay, by) < y && y < Math.max(ay, by)) turns += ay > by ? 1 : -1;
    }
  return turns;
}

test("a square is four corners, clockwise from its upper left; a hole in it goes the other way", () => {
  expect(pixelContours(glyphOf(2, -1, "#"))).toEqual([[2, 0, 3, 0, 3, -1, 2, -1]]);
  const ring = pixelContours(glyphOf(0, 0, "###", "#.#", "###"));
  expect(ring.map((contour) => signedArea(Float64Array.from(contour)))).toEqual(expect.arrayContaining([-9, 1]));
  expect(pixelContours(glyphOf(0, 0, "...", "..."))).toEqual([]);
  // Long edges have corners at their ends alone.
  expect(pixelContours(glyphOf(0, 0, "####"))).toEqual([[0, 1, 4, 1, 4, 0, 0, 0]]);
});

test("squares that meet in a corner alone are lines of their own", () => {
  for (const rows of [
    ["#.", ".#"],
    [".#", "#."],
  ]) {
    const contours = pixelContours(glyphOf(0, 0, ...rows));
    expect(contours.map((contour) => contour.length)).toEqual([8, 8]);
  }
});

function random(rng: ReturnType<typeof seededRng>): PixelGlyph {
  const [width, height] = [1 + rng.below(19), 1 + rng.below(9)];
  const filled = Uint8Array.from({ length: width * height + 5 }, () => Number(rng.below(5) < 3));
  return { left: rng.below(9) - 4, bottom: rng.below(9) - 4, width, height, filled };
}

test("of any squares the lines go once round each that is filled and round no other, and turn at each corner", () => {
  const rng = seededRng(11);
  for (let round = 0; round < 120; round++) {
    const glyph = random(rng);
    const contours = pixelContours(glyph);
    let filled = 0;
    for (let y = -1; y <= glyph.height; y++)
      for (let x = -1; x <= glyph.width; x++) {
        const isIn =
          x >= 0 && x < glyph.width && y >= 0 && y < glyph.height && glyph.filled[y * glyph.width + x] === 1;
        if (isIn) filled++;
        expect(turnsRound(contours, glyph.left + x + 0.5, glyph.bottom + y + 0.5)).toBe(Number(isIn));
      }
    expect(contours.reduce((sum, contour) => sum - signedArea(Float64Array.from(contour)), 0)).toBeCloseTo(
      filled,
      9,
    );
    for (const contour of contours)
      for (let i = 0; i < contour.length; i += 2) {
        const [j, k] = [(i + 2) % contour.length, (i + 4) % contour.length];
        const isLevel = contour[i + 1] === contour[j + 1];
        expect(isLevel ? contour[j] : contour[j + 1]).toBe(isLevel ? contour[k] : contour[k + 1]);
      }
  }
});

const bytes = (...words: (readonly [value: number, count: number])[]): number[] =>
  words.flatMap(([value, count]) =>
    Array.from({ length: count }, (_, i) => (value >>> (8 * (count - 1 - i))) & 255),
  );

/** A font of squares packed as its description says: tables one after the other, then zlib. */
function packed(glyphs: readonly PixelGlyph[], side: number, maxp: readonly number[]): Uint8Array {
  const rows = glyphs.flatMap(({ width, height, filled }) =>
    Array.from({ length: height }, (_, y) =>
      Array.from({ length: Math.ceil(width / 8) }, (_, byte) =>
        Array.from({ length: 8 }, (_, bit) =>
          8 * byte + bit < width && filled[y * width + 8 * byte + bit] === 1 ? 128 >> bit : 0,
        ).reduce((a, b) => a + b),
      ),
    ).flat(),
  );
  const column = (of: (glyph: PixelGlyph) => number) => glyphs.map(of);
  const glyf = [
    ...bytes([side, 2], [glyphs.length, 4]),
    ...[
      column(({ left }) => left + PIXEL_SHIFT),
      column(({ bottom }) => bottom + PIXEL_SHIFT),
      column(({ width }) => width),
      column(({ height }) => height),
    ].flat(),
    ...rows,
  ];
  const tables: [string, readonly number[]][] = [
    ["maxp", maxp],
    ["zzzz", [1, 2, 3]],
    ["glyf", glyf],
    ["head", [7, 7]],
  ];
  const plain = [
    ...bytes([tables.length, 2]),
    ...tables.flatMap(([tag, data]) => [...bytes([tagOf(tag), 4], [data.length, 4]), ...data]),
  ];
  return Uint8Array.from([
    ..."LWPX".split("").map((sign) => sign.charCodeAt(0)),
    ...zlibSync(Uint8Array.from(plain)),
  ]);
}

/** A simple glyph as OpenType 1.9 ("glyf") has it: its contours' corners in font units, its box, and where it ends. */
function decoded(data: Uint8Array): {
  contours: number[][];
  box: number[];
  instructions: number;
  onCurve: boolean;
} {
  const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
  const count = view.getInt16(0);
  const box = [2, 4, 6, 8].map((at) => view.getInt16(at));
  const ends = Array.from({ length: count }, (_, i) => view.getUint16(10 + 2 * i));
  let at = 10 + 2 * count;
  const instructions = view.getUint16(at);
  at += 2 + instructions;
  const points = ends.at(-1)! + 1;
  // No repeats: bit 8 would say how often a flag stands.
  const flags = Array.from({ length: points }, () => view.getUint8(at++));
  if (flags.some((flag) => (flag & 8) !== 0)) throw new Error("a repeated flag");
  const way = (short: number, same: number): number[] => {
    let value = 0;
    return flags.map((flag) => {
      if ((flag & short) !== 0) value += (flag & same) !== 0 ? view.getUint8(at++) : -view.getUint8(at++);
      else if ((flag & same) === 0) {
        value += view.getInt16(at);
        at += 2;
      }
      return value;
    });
  };
  const [xs, ys] = [way(2, 16), way(4, 32)];
  const contours = ends.map((end, i) => {
    const from = i === 0 ? 0 : ends[i - 1]! + 1;
    return Array.from({ length: end + 1 - from }, (_, k) => [xs[from + k]!, ys[from + k]!]).flat();
  });
  if (data.length - at > 3) throw new Error("more behind the glyph than fills a word");
  return { contours, box, instructions, onCurve: flags.every((flag) => (flag & 1) === 1) };
}

test("a packed font comes out as the glyphs it was packed of, its largest named, other tables as they were, in order", async () => {
  const rng = seededRng(4);
  const empty: PixelGlyph = { left: 0, bottom: 0, width: 0, height: 0, filled: new Uint8Array(0) };
  for (const side of [1, 64, 300]) {
    const glyphs = [...Array.from({ length: 12 }, () => random(rng)), empty, random(rng)];
    const file = await unpackPixels(
      packed(
        glyphs,
        side,
        Array.from({ length: 12 }, (_, i) => i),
      ),
    );
    const view = new DataView(file.buffer);
    expect(view.getUint32(0)).toBe(0x00010000);
    const tables = fontTables(file);
    const of = (tag: string) => tables.find((table) => table.tag === tagOf(tag))!.data;
    expect(tables.map(({ tag }) => tag)).toEqual(["glyf", "head", "loca", "maxp", "zzzz"].map(tagOf));
    expect([...of("zzzz"), ...of("head")]).toEqual([1, 2, 3, 7, 7]);
    const loca = of("loca");
    const offsets = Array.from({ length: loca.length / 4 }, (_, i) =>
      new DataView(loca.buffer, loca.byteOffset).getUint32(4 * i),
    );
    expect(offsets).toHaveLength(glyphs.length + 1);
    expect([offsets[0], offsets.at(-1)]).toEqual([0, of("glyf").length]);
    const wanted = glyphs.map((glyph) => pixelContours(glyph).map((contour) => contour.map((mm) => mm * side)));
    for (const [i, { left, bottom, width, height }] of glyphs.entries()) {
      const data = of("glyf").subarray(offsets[i], offsets[i + 1]);
      expect(data.length % 4).toBe(0);
      if (width === 0) expect(data).toHaveLength(0);
      else {
        const glyph = decoded(data);
        expect(glyph.contours).toEqual(wanted[i]);
        expect(glyph.box).toEqual([left, bottom, left + width, bottom + height].map((squares) => squares * side));
        expect([glyph.instructions, glyph.onCurve]).toEqual([0, true]);
      }
    }
    const maxp = new DataView(of("maxp").buffer, of("maxp").byteOffset);
    expect(maxp.getUint16(6)).toBe(Math.max(...wanted.map((contours) => contours.flat().length / 2)));
    expect(maxp.getUint16(8)).toBe(Math.max(...wanted.map((contours) => contours.length)));
    expect([...of("maxp")].filter((_, i) => i < 6 || i > 9)).toEqual([0, 1, 2, 3, 4, 5, 10, 11]);
  }
});

test("any other file is left as it is", async () => {
  for (const file of [Uint8Array.of(0, 1, 0, 0, 5), Uint8Array.of(76, 87, 80), new Uint8Array(0)])
    expect(await unpackPixels(file)).toBe(file);
});

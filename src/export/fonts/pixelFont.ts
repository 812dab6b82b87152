import { inflated } from "./inflated.ts";
import { type PixelGlyph, pixelContours } from "./pixelGlyph.ts";
import { type FontTable, fontFile, tagOf } from "./sfnt.ts";

/**
 * A font all of squares, packed for a page that carries it: four letters, then zlib data. Unpacked they are the number
 * of tables (16 bits), for each its tag and length (32 bits each) and its bytes. The table of glyphs holds the side of
 * a square in font units (16 bits), the number of glyphs (32 bits), every glyph's left, bottom (each 64 more), width
 * and height in squares, a byte each and all lefts first; then the glyphs' rows, lowest first, a bit a square.
 */
export const PIXEL_FONT = tagOf("LWPX");
/** What is added to a glyph's left and bottom so that a byte holds it. */
export const PIXEL_SHIFT = 64;

const TRUE_TYPE = 0x00010000;
const GLYF = tagOf("glyf");
const LOCA = tagOf("loca");
const MAXP = tagOf("maxp");

/** A packed font of squares as the TrueType file it stands for; any other file as it is. */
export async function unpackPixels(file: Uint8Array): Promise<Uint8Array> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.byteLength < 4 || view.getUint32(0) !== PIXEL_FONT) return file;
  const data = await inflated(file.subarray(4), "deflate");
  const read = new DataView(data.buffer);
  const tables: FontTable[] = [];
  let at = 2;
  for (let i = read.getUint16(0); i > 0; i--) {
    const tag = read.getUint32(at);
    const length = read.getUint32(at + 4);
    at += 8;
    const table = data.subarray(at, at + length);
    at += length;
    if (tag !== GLYF) {
      // Copied, because the size of the largest glyph is written into one of them.
      tables.push({ tag, sum: 0, data: table.slice() });
      continue;
    }
    const { glyf, loca, points, contours } = glyphTables(table);
    tables.push({ tag: GLYF, sum: 0, data: glyf }, { tag: LOCA, sum: 0, data: loca });
    const largest = tables.find((one) => one.tag === MAXP)!.data;
    new DataView(largest.buffer).setUint16(6, points);
    new DataView(largest.buffer).setUint16(8, contours);
  }
  tables.sort((a, b) => a.tag - b.tag);
  return fontFile(TRUE_TYPE, tables);
}

interface GlyphTables {
  readonly glyf: Uint8Array;
  /** Offsets of 32 bits. */
  readonly loca: Uint8Array;
  /** Of the glyph that has most. */
  readonly points: number;
  readonly contours: number;
}

/** Source: OpenType 1.9, "glyf" and "loca". */
function glyphTables(table: Uint8Array): GlyphTables {
  const head = new DataView(table.buffer, table.byteOffset);
  const side = head.getUint16(0);
  const count = head.getUint32(2);
  const loca = new Uint8Array(4 * (count + 1));
  const offsets = new DataView(loca.buffer);
  const out = new GlyphBytes();
  const filled = new Uint8Array(256 * 256);
  let rows = 6 + 4 * count;
  let points = 0;
  let contours = 0;
  for (let i = 0; i < count; i++) {
    const field = (k: number): number => table[6 + k * count + i]!;
    const glyph = {
      left: field(0) - PIXEL_SHIFT,
      bottom: field(1) - PIXEL_SHIFT,
      width: field(2),
      height: field(3),
      filled,
    };
    rows = readRows(table, rows, glyph);
    if (glyph.width > 0) {
      const lines = pixelContours(glyph);
      out.glyph(glyph, lines, side);
      contours = Math.max(contours, lines.length);
      points = Math.max(
        points,
        lines.reduce((sum, line) => sum + line.length / 2, 0),
      );
    }
    offsets.setUint32(4 * (i + 1), out.length);
  }
  return { glyf: out.bytes(), loca, points, contours };
}

/** Reads a glyph's squares; gives where the next one's begin. */
function readRows(table: Uint8Array, from: number, { width, height, filled }: PixelGlyph): number {
  const across = (width + 7) >> 3;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      filled[y * width + x] = (table[from + y * across + (x >> 3)]! >> (7 - (x & 7))) & 1;
  return from + across * height;
}

/** Glyphs one after the other, as the table of glyphs has them. */
class GlyphBytes {
  length = 0;
  private room = new Uint8Array(1 << 20);

  bytes(): Uint8Array {
    return this.room.subarray(0, this.length);
  }

  glyph({ left, bottom, width, height }: PixelGlyph, lines: readonly (readonly number[])[], side: number): void {
    for (const word of [lines.length, left * side, bottom * side, (left + width) * side, (bottom + height) * side])
      this.word(word);
    let last = -1;
    for (const line of lines) {
      last += line.length / 2;
      this.word(last);
    }
    // No instructions.
    this.word(0);
    const steps = [stepsAlong(lines, 0, side), stepsAlong(lines, 1, side)] as const;
    for (let i = 0; i <= last; i++) this.byte(1 | flagOf(steps[0][i]!, 2, 16) | flagOf(steps[1][i]!, 4, 32));
    for (const way of steps)
      for (const step of way) {
        if (Math.abs(step) > 255) this.word(step);
        else if (step !== 0) this.byte(Math.abs(step));
      }
    while (this.length & 3) this.byte(0);
  }

  private byte(value: number): void {
    if (this.length === this.room.length) {
      const larger = new Uint8Array(2 * this.room.length);
      larger.set(this.room);
      this.room = larger;
    }
    this.room[this.length++] = value;
  }

  private word(value: number): void {
    this.byte((value >> 8) & 255);
    this.byte(value & 255);
  }
}

/** How far each corner lies from the one before, along (0) or up (1), in font units. */
function stepsAlong(lines: readonly (readonly number[])[], way: 0 | 1, side: number): number[] {
  let before = 0;
  return lines.flatMap((line) =>
    line.flatMap((at, i) => {
      if ((i & 1) !== way) return [];
      const step = at * side - before;
      before = at * side;
      return [step];
    }),
  );
}

/** Bits of a corner's flag: one byte and its sign, the same as before, or two bytes. */
function flagOf(step: number, short: number, same: number): number {
  if (step === 0) return same;
  if (Math.abs(step) > 255) return 0;
  return step > 0 ? short | same : short;
}

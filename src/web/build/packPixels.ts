import { deflateSync } from "node:zlib";
import { PIXEL_FONT, PIXEL_SHIFT } from "../../export/fonts/pixelFont.ts";
import { fontTables, tagOf } from "../../export/fonts/sfnt.ts";
import { trueTypeRings } from "./trueTypeRings.ts";

/** What a PDF or a drawing reads of a font besides its glyphs. */
const KEPT = ["OS/2", "cmap", "head", "hhea", "hmtx", "maxp", "name", "post"];

/**
 * A TrueType font whose glyphs are all of squares of one size, packed as `unpackPixels` reads it: no more than a
 * quarter of what its outlines take. Throws when a glyph is not of squares, so that none is ever drawn wrong.
 */
export function packPixels(file: Uint8Array, side: number): Uint8Array {
  const tables = new Map(fontTables(file).map(({ tag, data }) => [tag, data]));
  const parts: Buffer[] = [];
  const add = (letters: string, data: Uint8Array): void => {
    const head = Buffer.alloc(8);
    head.writeUInt32BE(tagOf(letters), 0);
    head.writeUInt32BE(data.length, 4);
    parts.push(head, Buffer.from(data));
  };
  for (const letters of KEPT) add(letters, letters === "post" ? namelessPost(tables) : tables.get(tagOf(letters))!);
  add("glyf", squares(trueTypeRings(file), side));
  const count = Buffer.alloc(2);
  count.writeUInt16BE(KEPT.length + 1);
  const magic = Buffer.alloc(4);
  magic.writeUInt32BE(PIXEL_FONT);
  return Buffer.concat([magic, deflateSync(Buffer.concat([count, ...parts]), { level: 9 })]);
}

/** Version 3 of the table has no names of glyphs (OpenType, "post"); nobody reads them. */
function namelessPost(tables: ReadonlyMap<number, Uint8Array>): Uint8Array {
  const post = Buffer.from(tables.get(tagOf("post"))!.subarray(0, 32));
  post.writeUInt32BE(0x00030000);
  return post;
}

function squares(glyphs: readonly (readonly number[][])[], side: number): Uint8Array {
  const head = Buffer.alloc(6);
  head.writeUInt16BE(side, 0);
  head.writeUInt32BE(glyphs.length, 2);
  const drawn = glyphs.map((rings) => drawnGlyph(rings, side));
  const fields = [0, 1, 2, 3].map((k) => Buffer.from(drawn.map(({ box }) => box[k]!)));
  return Buffer.concat([head, ...fields, ...drawn.map(({ rows }) => rows)]);
}

/** One glyph's place and size, and its rows of bits. */
function drawnGlyph(rings: readonly number[][], side: number): { box: number[]; rows: Buffer } {
  if (rings.length === 0) return { box: [0, 0, 0, 0], rows: Buffer.alloc(0) };
  const inSquares = rings.map((ring) => ring.map((at) => at / side));
  const all = inSquares.flat();
  if (!all.every(Number.isInteger)) throw new RangeError("packPixels: a corner does not lie on the grid");
  const [xs, ys] = [0, 1].map((way) => all.filter((_, i) => (i & 1) === way)) as [number[], number[]];
  const left = Math.min(...xs);
  const bottom = Math.min(...ys);
  const width = Math.max(...xs) - left;
  const height = Math.max(...ys) - bottom;
  // How often the outline goes round each square: changes at upright edges, summed from the left.
  const turns = new Int32Array((width + 1) * height);
  for (const ring of inSquares)
    for (let i = 0; i < ring.length; i += 2) {
      const [x, y] = [ring[i]! - left, ring[i + 1]! - bottom];
      const next = (i + 2) % ring.length;
      const [toX, toY] = [ring[next]! - left, ring[next + 1]! - bottom];
      if (x !== toX && y !== toY) throw new RangeError("packPixels: an edge is slanted");
      for (let row = Math.min(y, toY); row < Math.max(y, toY); row++)
        turns[row * (width + 1) + x]! += toY > y ? 1 : -1;
    }
  const across = (width + 7) >> 3;
  const rows = Buffer.alloc(across * height);
  for (let y = 0; y < height; y++)
    for (let x = 0, round = 0; x < width; x++) {
      round += turns[y * (width + 1) + x]!;
      if (round !== 0) rows[y * across + (x >> 3)]! |= 128 >> (x & 7);
    }
  return { box: [left + PIXEL_SHIFT, bottom + PIXEL_SHIFT, width, height], rows };
}

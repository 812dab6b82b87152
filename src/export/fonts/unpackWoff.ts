import { inflated } from "./inflated.ts";
import { unpackPixels } from "./pixelFont.ts";
import { type FontTable, fontFile } from "./sfnt.ts";

const WOFF = 0x774f4646;
const HEAD = 44;
const ENTRY = 20;

/**
 * A WOFF file as the TrueType file it packs; any other file as it is. Glyphs are read table by table, and unpacking
 * a packed table for each glyph would take seconds.
 * Source: WOFF File Format 1.0 (W3C), sections 3 to 5; OpenType, table directory.
 */
async function unpackWoff(file: Uint8Array): Promise<Uint8Array> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.byteLength < HEAD || view.getUint32(0) !== WOFF) return file;
  const count = view.getUint16(12);
  const tables: FontTable[] = [];
  for (let i = 0; i < count; i++) {
    const at = HEAD + ENTRY * i;
    const offset = view.getUint32(at + 4);
    const packed = view.getUint32(at + 8);
    const length = view.getUint32(at + 12);
    const data = file.subarray(offset, offset + packed);
    tables.push({
      tag: view.getUint32(at),
      sum: view.getUint32(at + 16),
      data: packed < length ? await inflated(data, "deflate") : data,
    });
  }
  return fontFile(view.getUint32(4), tables);
}

/** A font file as libraries read it: unpacked, whether it came as gzip, WOFF, our font of squares or as it is. */
export async function unpackFont(file: Uint8Array): Promise<Uint8Array> {
  const isGzip = file[0] === 0x1f && file[1] === 0x8b;
  return unpackPixels(await unpackWoff(isGzip ? await inflated(file, "gzip") : file));
}

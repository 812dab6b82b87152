/** What browsers and Node ≥ 18 both have for unpacking zlib data; only what is used of it. */
interface Unpacker {
  readonly writable: { getWriter(): { write(chunk: Uint8Array): Promise<void>; close(): Promise<void> } };
  readonly readable: { getReader(): { read(): Promise<{ readonly done: boolean; readonly value?: Uint8Array }> } };
}
declare const DecompressionStream: new (format: "deflate") => Unpacker;

const WOFF = 0x774f4646;
const HEAD = 44;
const ENTRY = 20;

/**
 * A WOFF file as the TrueType file it packs; any other file as it is. Glyphs are read table by table, and unpacking
 * a packed table for each glyph would take seconds.
 * Source: WOFF File Format 1.0 (W3C), sections 3 to 5; OpenType, table directory.
 */
export async function unpackWoff(file: Uint8Array): Promise<Uint8Array> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.byteLength < HEAD || view.getUint32(0) !== WOFF) return file;
  const count = view.getUint16(12);
  const tables: { tag: number; sum: number; data: Uint8Array }[] = [];
  for (let i = 0; i < count; i++) {
    const at = HEAD + ENTRY * i;
    const offset = view.getUint32(at + 4);
    const packed = view.getUint32(at + 8);
    const length = view.getUint32(at + 12);
    const data = file.subarray(offset, offset + packed);
    tables.push({
      tag: view.getUint32(at),
      sum: view.getUint32(at + 16),
      data: packed < length ? await inflated(data) : data,
    });
  }
  return sfntOf(view.getUint32(4), tables);
}

function sfntOf(flavor: number, tables: readonly { tag: number; sum: number; data: Uint8Array }[]): Uint8Array {
  const directory = 12 + 16 * tables.length;
  const padded = tables.map(({ data }) => (data.length + 3) & ~3);
  const out = new Uint8Array(directory + padded.reduce((sum, size) => sum + size, 0));
  const view = new DataView(out.buffer);
  const power = Math.floor(Math.log2(tables.length));
  view.setUint32(0, flavor);
  view.setUint16(4, tables.length);
  view.setUint16(6, 16 * 2 ** power);
  view.setUint16(8, power);
  view.setUint16(10, 16 * (tables.length - 2 ** power));
  let offset = directory;
  tables.forEach(({ tag, sum, data }, i) => {
    const at = 12 + 16 * i;
    view.setUint32(at, tag);
    view.setUint32(at + 4, sum);
    view.setUint32(at + 8, offset);
    view.setUint32(at + 12, data.length);
    out.set(data, offset);
    offset += padded[i]!;
  });
  return out;
}

async function inflated(data: Uint8Array): Promise<Uint8Array> {
  const unpacker = new DecompressionStream("deflate");
  const writer = unpacker.writable.getWriter();
  const written = writer.write(data).then(() => writer.close());
  const reader = unpacker.readable.getReader();
  const chunks: Uint8Array[] = [];
  for (let part = await reader.read(); !part.done; part = await reader.read()) chunks.push(part.value!);
  await written;
  const out = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    out.set(chunk, at);
    at += chunk.length;
  }
  return out;
}

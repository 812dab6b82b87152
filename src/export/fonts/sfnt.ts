/** One table of a font file. */
export interface FontTable {
  /** Four letters as a number, first letter highest. */
  readonly tag: number;
  /** Checksum as the directory has it; nothing here reads it. */
  readonly sum: number;
  readonly data: Uint8Array;
}

/** Tables of a TrueType or OpenType file, unpacked, in the order of its directory. */
export function fontTables(file: Uint8Array): FontTable[] {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  return Array.from({ length: view.getUint16(4) }, (_, i) => {
    const at = 12 + 16 * i;
    const offset = view.getUint32(at + 8);
    const data = file.subarray(offset, offset + view.getUint32(at + 12));
    return { tag: view.getUint32(at), sum: view.getUint32(at + 4), data };
  });
}

/** A font file of its tables. Source: OpenType 1.9, "Organization of an OpenType Font". */
export function fontFile(flavor: number, tables: readonly FontTable[]): Uint8Array {
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

/** Four letters as the number that stands for them in a font file. */
export function tagOf(letters: string): number {
  return [...letters].reduce((tag, letter) => tag * 256 + letter.charCodeAt(0), 0);
}

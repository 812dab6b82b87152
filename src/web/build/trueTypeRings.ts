import { fontTables, tagOf } from "../../export/fonts/sfnt.ts";

/**
 * The outlines of every glyph of a TrueType file: for each glyph its contours as points (x and y in turn, font units),
 * whether they lie on the line or off it. Glyphs made of other glyphs are refused. Source: OpenType 1.9, "glyf".
 */
export function trueTypeRings(file: Uint8Array): number[][][] {
  const tables = new Map(fontTables(file).map(({ tag, data }) => [tag, data]));
  const table = (letters: string): DataView => {
    const { buffer, byteOffset, byteLength } = tables.get(tagOf(letters))!;
    return new DataView(buffer, byteOffset, byteLength);
  };
  const loca = table("loca");
  const glyf = table("glyf");
  const isLong = table("head").getInt16(50) === 1;
  const offset = (i: number): number => (isLong ? loca.getUint32(4 * i) : 2 * loca.getUint16(2 * i));
  return Array.from({ length: table("maxp").getUint16(4) }, (_, i) =>
    offset(i) === offset(i + 1) ? [] : ringsAt(glyf, offset(i)),
  );
}

function ringsAt(glyf: DataView, start: number): number[][] {
  const count = glyf.getInt16(start);
  if (count < 0) throw new RangeError("trueTypeRings: a glyph is made of others");
  let at = start + 10;
  const ends: number[] = [];
  for (let i = 0; i < count; i++, at += 2) ends.push(glyf.getUint16(at));
  const points = (ends.at(-1) ?? -1) + 1;
  at += 2 + glyf.getUint16(at);
  const flags: number[] = [];
  while (flags.length < points) {
    const flag = glyf.getUint8(at++);
    flags.push(flag);
    if (flag & 8) for (let again = glyf.getUint8(at++); again > 0; again--) flags.push(flag);
  }
  const axis = (short: number, same: number): number[] => {
    let value = 0;
    return flags.map((flag) => {
      if (flag & short) value += flag & same ? glyf.getUint8(at++) : -glyf.getUint8(at++);
      else if (!(flag & same)) {
        value += glyf.getInt16(at);
        at += 2;
      }
      return value;
    });
  };
  const xs = axis(2, 16);
  const ys = axis(4, 32);
  return ends.map((end, i) => {
    const first = i === 0 ? 0 : ends[i - 1]! + 1;
    return xs.slice(first, end + 1).flatMap((x, k) => [x, ys[first + k]!]);
  });
}

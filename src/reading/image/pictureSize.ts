/**
 * Width and height that a PNG or JPEG states, before anything of it is unpacked; null when it is neither.
 * Source: PNG (ISO 15948) 11.2.2 IHDR; JPEG (ITU-T T.81) B.2.2, the frame header.
 */
export function pictureSize(bytes: Uint8Array): { readonly width: number; readonly height: number } | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length >= 24 && bytes[0] === 0x89) return { width: view.getUint32(16), height: view.getUint32(20) };
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  for (let at = 2; at + 9 < bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const kind = bytes[at + 1]!;
    // Fill bytes and markers without a length.
    if (kind === 0xff || kind === 0x01 || (kind >= 0xd0 && kind <= 0xd8)) {
      at += kind === 0xff ? 1 : 2;
      continue;
    }
    const isFrame = kind >= 0xc0 && kind <= 0xcf && kind !== 0xc4 && kind !== 0xc8 && kind !== 0xcc;
    if (isFrame) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

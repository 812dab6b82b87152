/** A picture in grey: 0 black to 255 white, row after row from the top. */
export interface GrayImage {
  readonly width: number;
  readonly height: number;
  readonly values: Uint8Array;
}

/** The way up that a JPEG is kept; 1 when it says nothing. */
export type KeptWay = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/**
 * Which way up a JPEG says it is to be shown. Cameras keep the picture as the sensor lay and say so in its head.
 * Source: Exif 2.32 (JEITA CP-3451), 4.6.4 A, tag 0x0112 Orientation; TIFF 6.0 for the directory.
 */
export function keptWay(bytes: Uint8Array): KeptWay {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff; ) {
    const kind = bytes[at + 1]!;
    if (kind === 0xff) at += 1;
    else if (kind === 0xda) return 1;
    else {
      const length = view.getUint16(at + 2);
      if (kind === 0xe1 && isExif(bytes, at + 4)) return inDirectory(view, at + 10, at + 2 + length);
      at += 2 + length;
    }
  }
  return 1;
}

function isExif(bytes: Uint8Array, at: number): boolean {
  return [0x45, 0x78, 0x69, 0x66, 0, 0].every((value, i) => bytes[at + i] === value);
}

function inDirectory(view: DataView, start: number, told: number): KeptWay {
  const end = Math.min(told, view.byteLength);
  if (start + 8 > end) return 1;
  const isLittle = view.getUint16(start) === 0x4949;
  const first = start + view.getUint32(start + 4, isLittle);
  if (first + 2 > end) return 1;
  const count = view.getUint16(first, isLittle);
  for (let i = 0, at = first + 2; i < count && at + 12 <= end; i++, at += 12) {
    if (view.getUint16(at, isLittle) !== 0x0112) continue;
    const way = view.getUint16(at + 8, isLittle);
    return way >= 1 && way <= 8 ? (way as KeptWay) : 1;
  }
  return 1;
}

/** The picture as it is to be shown. O(pixels). */
export function uprightImage(image: GrayImage, way: KeptWay): GrayImage {
  if (way === 1) return image;
  const { width, height, values } = image;
  const isTurned = way >= 5;
  const [across, down] = isTurned ? [height, width] : [width, height];
  const out = new Uint8Array(values.length);
  for (let y = 0; y < down; y++)
    for (let x = 0; x < across; x++) {
      const [u, v] = isTurned ? [y, x] : [x, y];
      // 2, 3, 7, 8: kept from the right; 3, 4, 6, 7: kept from below.
      const sx = way === 2 || way === 3 || way === 7 || way === 8 ? width - 1 - u : u;
      const sy = way === 3 || way === 4 || way === 6 || way === 7 ? height - 1 - v : v;
      out[y * across + x] = values[sy * width + sx]!;
    }
  return { width: across, height: down, values: out };
}

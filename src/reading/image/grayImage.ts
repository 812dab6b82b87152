import { tooMuch, unreadable } from "../readingEnds.ts";
import { pictureSize } from "./pictureSize.ts";
import { type GrayImage, keptWay, uprightImage } from "./uprightImage.ts";

/** No pattern needs more; a photograph of a phone has 12 to 50. */
const MOST_MEGAPIXELS = 64;

/**
 * A PNG or JPEG in grey, the way up that it says. Its size is read and held against the limit before anything is unpacked; both decoders are
 * loaded when they are needed. Errors: `ReadingEnds` when it is none, too large or damaged.
 */
export async function grayImage(bytes: Uint8Array): Promise<GrayImage> {
  const size = pictureSize(bytes);
  if (size === null) return unreadable("not-image");
  if (size.width * size.height > MOST_MEGAPIXELS * 1e6) tooMuch("megapixels", MOST_MEGAPIXELS);
  try {
    return bytes[0] === 0x89 ? await fromPng(bytes) : uprightImage(await fromJpeg(bytes), keptWay(bytes));
  } catch {
    // What a decoder throws of a broken file is the file's problem.
    return unreadable("damaged");
  }
}

async function fromPng(bytes: Uint8Array): Promise<GrayImage> {
  const { decode } = await import("fast-png");
  const { width, height, data, channels, depth, palette } = decode(bytes);
  const full = 2 ** depth - 1;
  const at = (i: number): number => ((data[i] ?? 0) * 255) / full;
  const values = new Uint8Array(width * height);
  for (let i = 0; i < values.length; i++) {
    if (palette) {
      const [r = 0, g = 0, b = 0, a = 255] = palette[data[i] ?? 0] ?? [];
      values[i] = onWhite(luma(r, g, b), a);
    } else if (channels <= 2) values[i] = onWhite(at(i * channels), channels === 2 ? at(i * 2 + 1) : 255);
    else {
      const k = i * channels;
      values[i] = onWhite(luma(at(k), at(k + 1), at(k + 2)), channels === 4 ? at(k + 3) : 255);
    }
  }
  return { width, height, values };
}

async function fromJpeg(bytes: Uint8Array): Promise<GrayImage> {
  const { default: jpeg } = await import("jpeg-js");
  const { width, height, data } = jpeg.decode(bytes, {
    useTArray: true,
    formatAsRGBA: false,
    maxResolutionInMP: MOST_MEGAPIXELS,
    maxMemoryUsageInMB: 900,
  });
  const values = new Uint8Array(width * height);
  for (let i = 0; i < values.length; i++) values[i] = luma(data[3 * i]!, data[3 * i + 1]!, data[3 * i + 2]!);
  return { width, height, values };
}

/** Source: ITU-R BT.601, the luma of JPEG files. */
function luma(r: number, g: number, b: number): number {
  return 0.299 * r + 0.587 * g + 0.114 * b;
}

function onWhite(value: number, alpha: number): number {
  return (value * alpha + 255 * (255 - alpha)) / 255;
}

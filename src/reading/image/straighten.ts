import type { Box } from "../../core/geometry/box.ts";
import type { TablePicture } from "../../core/patterns/patternDrawing.ts";
import { type Homography, inverseOf, mapByHomography } from "./homography.ts";
import type { GrayImage } from "./uprightImage.ts";

/** A picture to look at needs no more pixels on its longer side. */
const MOST_PIXELS = 1600;
/** Finer than this nobody sees a line, mm. */
const FINEST = 0.1;

/**
 * What the camera saw of a part of the table, straight from above: each pixel is fetched from where the perspective put
 * it, between its four neighbours. White where the picture ends. Null when the map cannot be turned round.
 */
export function straightened(image: GrayImage, map: Homography, box: Box, pixelMm: number): TablePicture | null {
  const back = inverseOf(map);
  if (back === null) return null;
  const along = box.maxX - box.minX;
  const across = box.maxY - box.minY;
  const mm = Math.max(FINEST, pixelMm, Math.max(along, across) / MOST_PIXELS);
  const width = Math.max(1, Math.round(along / mm));
  const height = Math.max(1, Math.round(across / mm));
  const gray = new Uint8Array(width * height).fill(255);
  for (let row = 0; row < height; row++) {
    const y = box.maxY - ((row + 0.5) / height) * across;
    for (let column = 0; column < width; column++) {
      const x = box.minX + ((column + 0.5) / width) * along;
      const value = between(image, ...mapByHomography(back, x, y));
      if (value !== null) gray[row * width + column] = value;
    }
  }
  return { box, width, height, gray };
}

function between({ width, height, values }: GrayImage, x: number, y: number): number | null {
  const left = Math.floor(x);
  const top = Math.floor(y);
  if (!(left >= 0 && top >= 0 && left < width - 1 && top < height - 1)) return null;
  const at = top * width + left;
  const [right, down] = [x - left, y - top];
  const upper = values[at]! * (1 - right) + values[at + 1]! * right;
  const lower = values[at + width]! * (1 - right) + values[at + width + 1]! * right;
  return Math.round(upper * (1 - down) + lower * down);
}

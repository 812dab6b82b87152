import type { Affine } from "../../core/geometry/affine.ts";
import { scaling, thenAffine } from "../../core/geometry/affine.ts";
import type { Box } from "../../core/geometry/box.ts";

const MM_PER_POINT = 25.4 / 72;

/** A page as it is looked at. */
export interface PageFrame {
  /** From the page's own coordinates to mm, the lower-left corner of the turned page at 0. */
  readonly map: Affine;
  readonly box: Box;
}

/**
 * The page's box turned as `Rotate` says, in mm. Source: ISO 32000-1, 7.7.3.3 (page objects: CropBox, Rotate, UserUnit).
 */
export function pageFrame(view: readonly number[], rotate: number, userUnit: number): PageFrame {
  const [x0, y0, x1, y1] = view as readonly [number, number, number, number];
  const width = x1 - x0;
  const height = y1 - y0;
  const turned = ((rotate % 360) + 360) % 360;
  const upright: Affine =
    turned === 90
      ? [0, -1, 1, 0, -y0, x1]
      : turned === 180
        ? [-1, 0, 0, -1, x1, y1]
        : turned === 270
          ? [0, 1, -1, 0, y1, -x0]
          : [1, 0, 0, 1, -x0, -y0];
  const scale = MM_PER_POINT * userUnit;
  const isOnSide = turned === 90 || turned === 270;
  return {
    map: thenAffine(upright, scaling(scale)),
    box: {
      minX: 0,
      minY: 0,
      maxX: (isOnSide ? height : width) * scale,
      maxY: (isOnSide ? width : height) * scale,
    },
  };
}

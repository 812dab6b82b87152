import { outlineOf, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/**
 * Front or back of a bag whose lower corners are boxed: finished width, height and depth; a square as deep as half the
 * bag is cut out of each lower corner.
 */
export const boxCorners: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "height", ...SIZE, usual: 250 },
    { id: "depth", ...SIZE, usual: 100 },
  ],
  outline: ({ width, height, depth }) => {
    const half = depth / 2;
    return outlineOf(
      [
        [half, 0, 0, "bottom"],
        [half + width, 0, 0, "rightBase"],
        [half + width, half, 0, "rightSide"],
        [depth + width, half, 0, "right"],
        [depth + width, half + height, 0, "top"],
        [0, half + height, 0, "left"],
        [0, half, 0, "leftSide"],
        [half, half, 0, "leftBase"],
      ],
      UPRIGHT,
    );
  },
  places: ({ width, height, depth }) => [
    { dimension: "width", from: [depth / 2, 0], to: [depth / 2 + width, 0], off: -1 },
    { dimension: "height", from: [0, depth / 2], to: [0, depth / 2 + height], off: 1 },
    { dimension: "depth", from: [depth / 2 + width, 0], to: [depth + width, 0], off: -1, half: true },
  ],
});

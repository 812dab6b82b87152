import { outlineOf, QUARTER, rimmed, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** A base with two straight sides and half-round ends. */
export const oval: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "depth", ...SIZE, usual: 120 },
  ],
  outline: ({ width, depth }) => {
    const r = Math.min(width, depth) / 2;
    const [straightX, straightY] = [width - 2 * r, depth - 2 * r];
    return rimmed(
      outlineOf(
        [
          [r, 0, 0],
          [r + straightX, 0, QUARTER],
          [width, r, 0],
          [width, r + straightY, QUARTER],
          [width - r, depth, 0],
          [r, depth, QUARTER],
          [0, depth - r, 0],
          [0, r, QUARTER],
        ],
        UPRIGHT,
      ),
    );
  },
  places: ({ width, depth }) => [
    { dimension: "width", from: [0, depth / 2], to: [width, depth / 2], off: 0 },
    { dimension: "depth", from: [width, 0], to: [width, depth], off: -1 },
  ],
});

import { outlineOf, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** A flap that ends half round: straight sides, then a half circle, or one arc where it is not long enough for that. */
export const flapRound: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "height", ...SIZE, usual: 220 },
  ],
  outline: ({ width, height }) => {
    const rise = Math.min(width / 2, height);
    return outlineOf(
      [
        [0, height, 0, "round"],
        [0, rise, (2 * rise) / width],
        [width, rise],
        [width, height, 0, "top"],
      ],
      UPRIGHT,
    );
  },
  places: ({ width, height }) => [
    { dimension: "width", from: [0, height], to: [width, height], off: 1 },
    { dimension: "height", from: [width / 2, 0], to: [width / 2, height], off: 0 },
  ],
});

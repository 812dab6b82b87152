import { outlineOf, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** A disc. */
export const circle: ShapeRecord = shapeRecord({
  dimensions: [{ id: "diameter", ...SIZE, usual: 180 }],
  outline: ({ diameter }) => {
    const r = diameter / 2;
    return outlineOf(
      [
        [0, r, 1, "rim"],
        [diameter, r, 1],
      ],
      UPRIGHT,
    );
  },
  places: ({ diameter }) => [
    { dimension: "diameter", from: [0, diameter / 2], to: [diameter, diameter / 2], off: 0 },
  ],
});

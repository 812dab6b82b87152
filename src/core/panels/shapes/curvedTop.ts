import { outlineOf, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** A panel whose top edge bows up: `height` at its sides, and `rise` more in the middle. */
export const curvedTop: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "height", ...SIZE, usual: 200 },
    { id: "rise", ...SIZE, usual: 60 },
  ],
  outline: ({ width, height, rise }) => {
    if (rise > width / 2) return { dimension: "rise", mm: rise, leastMm: null, mostMm: width / 2 };
    return outlineOf(
      [
        [0, 0, 0, "bottom"],
        [width, 0, 0, "right"],
        [width, height, (2 * rise) / width, "top"],
        [0, height, 0, "left"],
      ],
      UPRIGHT,
    );
  },
  places: ({ width, height, rise }) => [
    { dimension: "width", from: [0, 0], to: [width, 0], off: -1 },
    { dimension: "height", from: [0, 0], to: [0, height], off: 1 },
    { dimension: "rise", from: [width / 2, height], to: [width / 2, height + rise], off: 0 },
  ],
});

import { outlineOf, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** A flap with a point in its middle. */
export const flapPointed: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "height", ...SIZE, usual: 220 },
    { id: "point", ...SIZE, usual: 80 },
  ],
  outline: ({ width, height, point }) => {
    if (point > height) return { dimension: "point", mm: point, leastMm: null, mostMm: height };
    return outlineOf(
      [
        [0, point, 0, "pointLeft"],
        [width / 2, 0, 0, "pointRight"],
        [width, point, 0, "right"],
        [width, height, 0, "top"],
        [0, height, 0, "left"],
      ],
      UPRIGHT,
    );
  },
  places: ({ width, height, point }) => [
    { dimension: "width", from: [0, height], to: [width, height], off: 1 },
    { dimension: "height", from: [width / 2, 0], to: [width / 2, height], off: 0 },
    { dimension: "point", from: [width, 0], to: [width, point], off: -1 },
  ],
});

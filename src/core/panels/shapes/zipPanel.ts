import { outlineOf, type ShapeRecord, SIZE, shapeRecord } from "./shapeRecord.ts";

/** One half of a panel with a zip down its middle; cut two. `width` is that of the whole panel with the zip. */
export const zipPanel: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "length", ...SIZE, usual: 400 },
    { id: "width", ...SIZE, usual: 80 },
    { id: "zip", least: 0, most: SIZE.most, usual: 8, otherwise: 8 },
  ],
  outline: ({ length, width, zip }) => {
    if (zip >= width) return { dimension: "zip", mm: zip, leastMm: null, mostMm: width };
    const half = (width - zip) / 2;
    return outlineOf([
      [0, 0, 0, "seam"],
      [length, 0, 0, "end"],
      [length, half, 0, "zip"],
      [0, half, 0, "start"],
    ]);
  },
  places: ({ length, width, zip }) => [
    { dimension: "length", from: [0, 0], to: [length, 0], off: -1 },
    { dimension: "width", from: [0, 0], to: [0, (width - zip) / 2], off: 1, half: true },
  ],
});

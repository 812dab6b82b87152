import { outlineOf, QUARTER, type ShapeRecord, SIZE, shapeRecord } from "./shapeRecord.ts";

/** A tab with one rounded end. */
export const tab: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "length", ...SIZE, usual: 80 },
    { id: "width", ...SIZE, usual: 30 },
    { id: "radius", least: 0, most: SIZE.most, usual: 15, otherwise: 0 },
  ],
  outline: ({ length, width, radius: r }) => {
    const mostMm = Math.min(width / 2, length);
    if (r > mostMm) return { dimension: "radius", mm: r, leastMm: null, mostMm };
    return outlineOf([
      [0, 0, 0, "bottom"],
      [length - r, 0, QUARTER, "end"],
      [length, r, 0],
      [length, width - r, QUARTER],
      [length - r, width, 0, "top"],
      [0, width, 0, "start"],
    ]);
  },
  places: ({ length, width }) => [
    { dimension: "length", from: [0, 0], to: [length, 0], off: -1 },
    { dimension: "width", from: [0, 0], to: [0, width], off: 1 },
  ],
});

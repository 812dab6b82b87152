import { outlineOf, type ShapeRecord, SIZE, shapeRecord } from "./shapeRecord.ts";

/**
 * A gusset that is as wide as the bag is deep along its base and narrows up the sides. `side` is the length of the seam,
 * along the slanted edge.
 */
export const gussetTapered: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "base", ...SIZE, usual: 300 },
    { id: "side", ...SIZE, usual: 220 },
    { id: "width", ...SIZE, usual: 100 },
    { id: "endWidth", ...SIZE, usual: 50 },
  ],
  outline: ({ base, side, width, endWidth }) => {
    const slant = (width - endWidth) / 2;
    if (Math.abs(slant) >= side) return { dimension: "side", mm: side, leastMm: Math.abs(slant), mostMm: null };
    const run = Math.sqrt(side * side - slant * slant);
    const end = 2 * run + base;
    const middle = Math.max(width, endWidth) / 2;
    const [low, high] = [middle - width / 2, middle + width / 2];
    return outlineOf([
      [0, middle - endWidth / 2, 0, "front"],
      [run, low],
      [run + base, low],
      [end, middle - endWidth / 2, 0, "end"],
      [end, middle + endWidth / 2, 0, "back"],
      [run + base, high],
      [run, high],
      [0, middle + endWidth / 2, 0, "start"],
    ]);
  },
  places: ({ base, side, width, endWidth }) => {
    const slant = (width - endWidth) / 2;
    const run = Math.sqrt(side * side - slant * slant);
    const middle = Math.max(width, endWidth) / 2;
    const low = middle - width / 2;
    return [
      { dimension: "side", from: [0, middle - endWidth / 2], to: [run, low], off: -1 },
      { dimension: "base", from: [run, low], to: [run + base, low], off: -1 },
      { dimension: "width", from: [run, low], to: [run, low + width], off: 0 },
      { dimension: "endWidth", from: [0, middle - endWidth / 2], to: [0, middle + endWidth / 2], off: 1 },
    ];
  },
});

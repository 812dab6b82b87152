import { drawn, outlineOf, type ShapeRecord, SIZE, shapeRecord } from "./shapeRecord.ts";

/** A gusset creased where it turns from the sides into the base: `side`, `base`, `side` along its seam. */
export const gussetBoxed: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "side", ...SIZE, usual: 220 },
    { id: "base", ...SIZE, usual: 300 },
    { id: "width", ...SIZE, usual: 80 },
  ],
  outline: ({ side, base, width }) => {
    const length = 2 * side + base;
    const crease = (x: number) => drawn("fold", [x, 0], [x, width]);
    return outlineOf(
      [
        [0, 0, 0, "front"],
        [length, 0, 0, "end"],
        [length, width, 0, "back"],
        [0, width, 0, "start"],
      ],
      { lines: [crease(side), crease(side + base)] },
    );
  },
  places: ({ side, base, width }) => [
    { dimension: "side", from: [0, 0], to: [side, 0], off: -1 },
    { dimension: "base", from: [side, 0], to: [side + base, 0], off: -1 },
    { dimension: "width", from: [0, 0], to: [0, width], off: 1 },
  ],
});

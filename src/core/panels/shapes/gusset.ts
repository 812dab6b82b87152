import { outlineOf, type ShapeRecord, SIZE, shapeRecord } from "./shapeRecord.ts";

/** A straight gusset: a strip as long as the edge it is sewn to, as wide as the bag is deep. */
export const gusset: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "length", ...SIZE, usual: 800 },
    { id: "width", ...SIZE, usual: 80 },
  ],
  outline: ({ length, width }) =>
    outlineOf([
      [0, 0, 0, "front"],
      [length, 0, 0, "end"],
      [length, width, 0, "back"],
      [0, width, 0, "start"],
    ]),
  places: ({ length, width }) => [
    { dimension: "length", from: [0, 0], to: [length, 0], off: -1 },
    { dimension: "width", from: [0, 0], to: [0, width], off: 1 },
  ],
});

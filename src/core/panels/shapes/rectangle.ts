import { outlineOf, type ShapeRecord, shapeRecord } from "./shapeRecord.ts";

/** A rectangle; `along` runs with the grain arrow. */
export const rectangle: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "along", least: 0.1, most: 100_000, usual: 350 },
    { id: "across", least: 0.1, most: 100_000, usual: 400 },
  ],
  outline: ({ along, across }) =>
    outlineOf([
      [0, 0, 0, "bottom"],
      [along, 0, 0, "right"],
      [along, across, 0, "top"],
      [0, across, 0, "left"],
    ]),
  places: ({ along, across }) => [
    { dimension: "along", from: [0, 0], to: [along, 0], off: -1 },
    { dimension: "across", from: [0, 0], to: [0, across], off: 1 },
  ],
});

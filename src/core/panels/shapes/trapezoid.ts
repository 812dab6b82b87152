import { outlineOf, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** A panel that is wider at one end, both sides alike. */
export const trapezoid: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "bottomWidth", ...SIZE, usual: 300 },
    { id: "topWidth", ...SIZE, usual: 360, otherwise: "bottomWidth" },
    { id: "height", ...SIZE, usual: 250 },
  ],
  outline: ({ bottomWidth, topWidth, height }) => {
    const middle = Math.max(bottomWidth, topWidth) / 2;
    return outlineOf(
      [
        [middle - bottomWidth / 2, 0, 0, "bottom"],
        [middle + bottomWidth / 2, 0, 0, "right"],
        [middle + topWidth / 2, height, 0, "top"],
        [middle - topWidth / 2, height, 0, "left"],
      ],
      UPRIGHT,
    );
  },
  places: ({ bottomWidth, topWidth, height }) => {
    const middle = Math.max(bottomWidth, topWidth) / 2;
    return [
      { dimension: "bottomWidth", from: [middle - bottomWidth / 2, 0], to: [middle + bottomWidth / 2, 0], off: -1 },
      { dimension: "topWidth", from: [middle - topWidth / 2, height], to: [middle + topWidth / 2, height], off: 1 },
      { dimension: "height", from: [0, 0], to: [0, height], off: 1 },
    ];
  },
});

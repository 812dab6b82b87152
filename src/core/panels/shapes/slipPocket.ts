import { outlineOf, QUARTER, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** A pocket open at the top, its lower corners rounded if wanted. */
export const slipPocket: ShapeRecord = roundBottomed(180, 150, 0);

/** Front or back of a bag whose gusset goes round its lower corners. */
export const roundBottom: ShapeRecord = roundBottomed(300, 250, 40);

function roundBottomed(usualWidth: number, usualHeight: number, usualRadius: number): ShapeRecord {
  return shapeRecord({
    dimensions: [
      { id: "width", ...SIZE, usual: usualWidth },
      { id: "height", ...SIZE, usual: usualHeight },
      { id: "radius", least: 0, most: SIZE.most, usual: usualRadius, otherwise: 0 },
    ],
    outline: ({ width, height, radius: r }) => {
      const mostMm = Math.min(width / 2, height);
      if (r > mostMm) return { dimension: "radius", mm: r, leastMm: null, mostMm };
      return outlineOf(
        [
          [r, 0, 0, "bottom"],
          [width - r, 0, QUARTER],
          [width, r, 0, "right"],
          [width, height, 0, "top"],
          [0, height, 0, "left"],
          [0, r, QUARTER],
        ],
        UPRIGHT,
      );
    },
    places: ({ width, height }) => [
      { dimension: "width", from: [0, 0], to: [width, 0], off: -1 },
      { dimension: "height", from: [0, 0], to: [0, height], off: 1 },
    ],
  });
}

import {
  type Corner,
  outlineOf,
  QUARTER,
  rimmed,
  type ShapeRecord,
  SIZE,
  shapeRecord,
  UPRIGHT,
} from "./shapeRecord.ts";

/** A base with rounded corners. */
export const roundedBase: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "depth", ...SIZE, usual: 120 },
    { id: "radius", least: 0, most: SIZE.most, usual: 40 },
  ],
  outline: ({ width, depth, radius: r }) => {
    const mostMm = Math.min(width, depth) / 2;
    if (r > mostMm) return { dimension: "radius", mm: r, leastMm: null, mostMm };
    const rim: Corner[] = [
      [r, 0, 0],
      [width - r, 0, QUARTER],
      [width, r, 0],
      [width, depth - r, QUARTER],
      [width - r, depth, 0],
      [r, depth, QUARTER],
      [0, depth - r, 0],
      [0, r, QUARTER],
    ];
    return rimmed(outlineOf(rim, UPRIGHT));
  },
  places: ({ width, depth, radius }) => [
    { dimension: "width", from: [0, depth / 2], to: [width, depth / 2], off: 0 },
    { dimension: "depth", from: [width, 0], to: [width, depth], off: -1 },
    {
      dimension: "radius",
      from: [width - radius, depth - radius],
      to: [width - radius * (1 - Math.SQRT1_2), depth - radius * (1 - Math.SQRT1_2)],
      off: 0,
    },
  ],
});

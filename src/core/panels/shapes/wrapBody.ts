import { type Corner, drawn, outlineOf, type ShapeRecord, SIZE, shapeRecord } from "./shapeRecord.ts";

/** Front, base and back in one piece, and a flap beyond the back if wanted: it wraps round two side panels. */
export const wrapBody: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "height", ...SIZE, usual: 220 },
    { id: "depth", ...SIZE, usual: 80 },
    { id: "flap", least: 0, most: 10_000, usual: 0, otherwise: 0 },
  ],
  outline: ({ width, height, depth, flap }) => {
    const base = height;
    const back = base + depth;
    const top = back + height;
    const end = top + flap;
    const corners: Corner[] = [
      [0, 0, 0, "frontTop"],
      [width, 0, 0, "rightFront"],
      [width, base, 0, "rightBase"],
      [width, back, 0, "rightBack"],
      [width, top, 0, "flapRight"],
      [width, end, 0, "backTop"],
      [0, end, 0, "flapLeft"],
      [0, top, 0, "leftBack"],
      [0, back, 0, "leftBase"],
      [0, base, 0, "leftFront"],
    ];
    const across = (y: number) => drawn("fold", [0, y], [width, y]);
    const lines = [across(base), across(back), ...(flap > 0 ? [across(top)] : [])];
    return outlineOf(corners, { lines, arrowDeg: 90 });
  },
  places: ({ width, height, depth, flap }) => [
    { dimension: "width", from: [0, 0], to: [width, 0], off: -1 },
    { dimension: "height", from: [0, 0], to: [0, height], off: 1 },
    { dimension: "depth", from: [0, height], to: [0, height + depth], off: 1 },
    ...(flap > 0
      ? ([
          { dimension: "flap", from: [0, 2 * height + depth], to: [0, 2 * height + depth + flap], off: 1 },
        ] as const)
      : []),
  ],
});

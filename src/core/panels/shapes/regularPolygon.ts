import {
  type Corner,
  outlineOf,
  rimmed,
  type ShapeOutline,
  type ShapeRecord,
  SIZE,
  shapeRecord,
  UPRIGHT,
} from "./shapeRecord.ts";

/** Six equal sides, the lowest level. */
export const hexagon: ShapeRecord = shapeRecord({
  dimensions: [{ id: "side", ...SIZE, usual: 60 }],
  outline: ({ side }) => regular(side, 6),
  places: ({ side }) => [{ dimension: "side", from: [side / 2, 0], to: [side * 1.5, 0], off: -1 }],
});

/** Any number of equal sides, the lowest level. */
export const regularPolygon: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "side", ...SIZE, usual: 60 },
    { id: "corners", least: 3, most: 100, usual: 8, isCount: true },
  ],
  outline: ({ side, corners }) => regular(side, corners),
  places: ({ side, corners }) => {
    const left = leftOf(side, corners);
    return [{ dimension: "side", from: [left, 0], to: [left + side, 0], off: -1 }];
  },
});

/** Radius of the circle through the corners. */
const throughCorners = (side: number, corners: number): number => side / (2 * Math.sin(Math.PI / corners));

/** How far the lowest side begins from the left of the box. */
function leftOf(side: number, corners: number): number {
  const r = throughCorners(side, corners);
  const least = Math.min(...Array.from({ length: corners }, (_, i) => r * Math.cos(turnOf(i, corners))));
  return -side / 2 - least;
}

/** Direction of corner i from the middle; corners 0 and 1 end the lowest side. */
const turnOf = (i: number, corners: number): number => -Math.PI / 2 + ((2 * i - 1) * Math.PI) / corners;

function regular(side: number, corners: number): ShapeOutline {
  const r = throughCorners(side, corners);
  const dx = leftOf(side, corners) + side / 2;
  const dy = side / (2 * Math.tan(Math.PI / corners));
  const all = Array.from({ length: corners }, (_, i): Corner => {
    // The lowest side lies exactly level.
    if (i < 2) return [dx + (i === 0 ? -side / 2 : side / 2), 0];
    return [dx + r * Math.cos(turnOf(i, corners)), dy + r * Math.sin(turnOf(i, corners))];
  });
  return rimmed(outlineOf(all, UPRIGHT));
}

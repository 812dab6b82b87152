import { arcsAlong } from "../../geometry/biarc.ts";
import { type Corner, outlineOf, type ShapeRecord, SIZE, shapeRecord, UPRIGHT } from "./shapeRecord.ts";

/** How far the arcs may lie from the ellipse, mm. */
const TOLERANCE = 0.005;

/** An ellipse, followed by arcs within 0.005 mm. */
export const ellipse: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 300 },
    { id: "depth", ...SIZE, usual: 120 },
  ],
  outline: ({ width, depth }) => {
    const a = width / 2;
    const b = depth / 2;
    const quarters = [0, 1, 2, 3].flatMap((i) =>
      arcsAlong(
        (t) => {
          const [c, s] = [Math.cos(t), Math.sin(t)];
          const speed = Math.hypot(a * s, b * c);
          return { x: a * (1 + c), y: b * (1 + s), dx: (-a * s) / speed, dy: (b * c) / speed };
        },
        (x, y) => offEllipse(x - a, y - b, a, b),
        (i * Math.PI) / 2,
        ((i + 1) * Math.PI) / 2,
        TOLERANCE,
      ),
    );
    const corners = quarters.map(([x, y, bulge], i): Corner => (i === 0 ? [x, y, bulge, "rim"] : [x, y, bulge]));
    return outlineOf(corners, UPRIGHT);
  },
  places: ({ width, depth }) => [
    { dimension: "width", from: [0, depth / 2], to: [width, depth / 2], off: 0 },
    { dimension: "depth", from: [width, 0], to: [width, depth], off: -1 },
  ],
});

/** Distance of a nearby point from the ellipse, to first order. */
function offEllipse(x: number, y: number, a: number, b: number): number {
  const f = (x / a) ** 2 + (y / b) ** 2 - 1;
  return Math.abs(f) / (2 * Math.hypot(x / a ** 2, y / b ** 2));
}

import { type ArcPart, arcPart, type StraightPart } from "../../core/patterns/curve.ts";

/**
 * An SVG arc from (x0, y0) by its radii, turn, flags and end, as the ellipse it lies on; radii that are too small are
 * made large enough, a radius of 0 gives a straight line, ends on one point give nothing.
 * Source: SVG 2, appendix B.2.4 and B.2.5 (from ends to centre, out-of-range radii).
 */
export function arcByEnds(
  x0: number,
  y0: number,
  radii: readonly [number, number],
  turnDeg: number,
  large: boolean,
  sweep: boolean,
  x: number,
  y: number,
): ArcPart | StraightPart | null {
  if (x0 === x && y0 === y) return null;
  let rx = Math.abs(radii[0]);
  let ry = Math.abs(radii[1]);
  if (rx === 0 || ry === 0) return { kind: "straight", x, y };
  const turn = (turnDeg * Math.PI) / 180;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const halfX = (x0 - x) / 2;
  const halfY = (y0 - y) / 2;
  const ownX = c * halfX + s * halfY;
  const ownY = -s * halfX + c * halfY;
  const reach = Math.hypot(ownX / rx, ownY / ry);
  if (reach > 1) {
    rx *= reach;
    ry *= reach;
  }
  const px = ownX / rx;
  const py = ownY / ry;
  const square = px * px + py * py;
  const side = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, (1 - square) / square));
  // Centre in the frame where the ellipse is the unit circle, then back.
  const unitX = side * py;
  const unitY = -side * px;
  const centreX = c * unitX * rx - s * unitY * ry + (x0 + x) / 2;
  const centreY = s * unitX * rx + c * unitY * ry + (y0 + y) / 2;
  const from = Math.atan2(py - unitY, px - unitX);
  const to = Math.atan2(-py - unitY, -px - unitX);
  let ahead = (to - from) % (2 * Math.PI);
  if (sweep && ahead < 0) ahead += 2 * Math.PI;
  if (!sweep && ahead > 0) ahead -= 2 * Math.PI;
  return arcPart([centreX, centreY], [c * rx, s * rx], [-s * ry, c * ry], from, ahead, [x, y]);
}

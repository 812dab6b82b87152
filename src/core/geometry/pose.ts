import { type Polygon, type Ring, reversedRing } from "./ring.ts";

/** How a piece is turned: mirrored first (in its own y axis, x → −x), then turned counter-clockwise. */
export interface Orientation {
  readonly turnDeg: number;
  readonly mirrored: boolean;
}

/** Where a piece lies: its orientation about its own origin, then a shift by (x, y) in mm. */
export interface Pose extends Orientation {
  readonly x: number;
  readonly y: number;
}

/** Cosine and sine of a turn, exact at multiples of 90°, so that quarter turns leave no rounding behind. */
export function turnCosSin(turnDeg: number): readonly [number, number] {
  const turn = ((turnDeg % 360) + 360) % 360;
  if (turn === 0) return [1, 0];
  if (turn === 90) return [0, 1];
  if (turn === 180) return [-1, 0];
  if (turn === 270) return [0, -1];
  const angle = (turn * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}

/** The ring as it lies at `pose`; winding is kept, so an outside stays counter-clockwise when mirrored. */
export function poseRing(ring: Ring, pose: Pose): Ring {
  const [c, s] = turnCosSin(pose.turnDeg);
  const flip = pose.mirrored ? -1 : 1;
  const out = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    const x = flip * ring[i]!;
    const y = ring[i + 1]!;
    out[i] = c * x - s * y + pose.x;
    out[i + 1] = s * x + c * y + pose.y;
  }
  return pose.mirrored ? reversedRing(out) : out;
}

/** The polygon as it lies at `pose`. */
export function posePolygon(polygon: Polygon, pose: Pose): Polygon {
  return { outer: poseRing(polygon.outer, pose), holes: polygon.holes.map((hole) => poseRing(hole, pose)) };
}

import { type Affine, SAME } from "../../core/geometry/affine.ts";
import { type DxfRecord, numberOf } from "./groups.ts";

type Vector = readonly [number, number, number];

/** Below it in x and y, a normal counts as standing upright. Source: DXF reference, arbitrary axis algorithm. */
const NEAR_UPRIGHT = 1 / 64;

/**
 * The map from an entity's own plane, given by its extrusion, to the world as seen from above. A normal straight down
 * mirrors x. Source: DXF reference, "Arbitrary axis algorithm".
 */
export function ownPlane(record: DxfRecord): Affine {
  const normal: Vector = [numberOf(record, 210, 0), numberOf(record, 220, 0), numberOf(record, 230, 1)];
  if (normal[0] === 0 && normal[1] === 0 && normal[2] > 0) return SAME;
  const isUpright = Math.abs(normal[0]) < NEAR_UPRIGHT && Math.abs(normal[1]) < NEAR_UPRIGHT;
  const n = unit(normal);
  const x = unit(cross(isUpright ? [0, 1, 0] : [0, 0, 1], n));
  const y = unit(cross(n, x));
  const height = numberOf(record, 38, numberOf(record, 30, 0));
  return [x[0], x[1], y[0], y[1], n[0] * height, n[1] * height];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Vector): Vector {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}

/**
 * A linear map with a shift, `[a, b, c, d, e, f]`: (x, y) goes to (a x + c y + e, b x + d y + f). The order of SVG's
 * `matrix()` and of PDF's `cm`.
 */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const SAME: Affine = [1, 0, 0, 1, 0, 0];

/** `first`, then `second`. */
export function thenAffine(first: Affine, second: Affine): Affine {
  const [a, b, c, d, e, f] = first;
  const [A, B, C, D, E, F] = second;
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}

/** Where a point goes. */
export function mapPoint(map: Affine, x: number, y: number): readonly [number, number] {
  return [map[0] * x + map[2] * y + map[4], map[1] * x + map[3] * y + map[5]];
}

/** Where a direction goes: the shift left out. */
export function mapDirection(map: Affine, x: number, y: number): readonly [number, number] {
  return [map[0] * x + map[2] * y, map[1] * x + map[3] * y];
}

/** By how much areas grow; negative when the map mirrors, 0 when it presses everything on one line. */
export function areaFactor(map: Affine): number {
  return map[0] * map[3] - map[1] * map[2];
}

export function scaling(x: number, y: number = x): Affine {
  return [x, 0, 0, y, 0, 0];
}

export function shift(x: number, y: number): Affine {
  return [1, 0, 0, 1, x, y];
}

/** Counter-clockwise turn where y is up, clockwise where it is down. */
export function turning(radians: number): Affine {
  const c = Math.cos(radians);
  const s = Math.sin(radians);
  return [c, s, -s, c, 0, 0];
}

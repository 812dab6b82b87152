import type { LaidOutline } from "./laidOutline.ts";

/** Share of the smaller piece's area that two pieces may have in common, so that rounding is no fault. */
const AREA_SHARE = 1e-6;
/** Share of the smaller piece's size by which a distance may fall short. */
const SIZE_SHARE = 1e-6;

/** Largest common area that still counts as touching. */
export function areaTolerance(a: LaidOutline, b: LaidOutline = a): number {
  return AREA_SHARE * Math.min(a.area, b.area);
}

/** Largest shortfall of a distance that still counts as kept. */
export function lengthTolerance(a: LaidOutline, b: LaidOutline = a): number {
  return SIZE_SHARE * Math.min(diagonal(a), diagonal(b));
}

function diagonal({ minX, minY, maxX, maxY }: LaidOutline): number {
  return Math.hypot(maxX - minX, maxY - minY);
}

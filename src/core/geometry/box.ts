import { type Ring, signedArea } from "./ring.ts";

/** Axis-parallel box; empty when `minX > maxX`. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The box that holds nothing: joined to another it gives the other. */
export const EMPTY_BOX: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** Bounding box of a ring. O(n). */
export function ringBox(ring: Ring): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** The least box that holds both. */
export function joinedBox(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/** The least box that holds all; the empty one for none. */
export function boxOfAll(boxes: readonly Box[]): Box {
  return boxes.reduce(joinedBox, EMPTY_BOX);
}

/** The box moved out by `by` on every side. */
export function grownBox(box: Box, by: number): Box {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}

/** Whether two boxes share a point, their edges included. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a.maxX >= b.minX && a.minX <= b.maxX && a.maxY >= b.minY && a.minY <= b.maxY;
}

/** Whether two boxes share more than an edge. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** Whether `inner` lies in `outer`, standing out by no more than `slack` mm. */
export function boxHolds(outer: Box, inner: Box, slack: number): boolean {
  return (
    inner.minX >= outer.minX - slack &&
    inner.maxX <= outer.maxX + slack &&
    inner.minY >= outer.minY - slack &&
    inner.maxY <= outer.maxY + slack
  );
}

/** True when the ring is an axis-parallel rectangle (four corners, within `tolerance` mm). */
export function isRectangle(ring: Ring, tolerance = 1e-9): boolean {
  if (ring.length !== 8) return false;
  const box = ringBox(ring);
  for (let i = 0; i < 8; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    const onX = Math.abs(x - box.minX) <= tolerance || Math.abs(x - box.maxX) <= tolerance;
    const onY = Math.abs(y - box.minY) <= tolerance || Math.abs(y - box.maxY) <= tolerance;
    if (!onX || !onY) return false;
  }
  const full = (box.maxX - box.minX) * (box.maxY - box.minY);
  return Math.abs(Math.abs(signedArea(ring)) - full) <= tolerance * (1 + full);
}

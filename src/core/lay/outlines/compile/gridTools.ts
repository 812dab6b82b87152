import { ringBox } from "../../../geometry/box.ts";
import { CLIPPER_RANGE } from "../../../geometry/clipper.ts";
import { type GridShape, gridShape } from "../../../geometry/noFit.ts";
import { type Polygon, type Ring, reversedRing, signedArea } from "../../../geometry/ring.ts";

/** The ring on the grid, relative to (cx, cy) mm. */
export function toGrid(ring: Ring, scale: number, cx: number, cy: number): Ring {
  return ring.map((value, i) => Math.round((value - (i % 2 === 0 ? cx : cy)) * scale) + 0);
}

/** The polygon on the grid, relative to (cx, cy) mm. */
export function polygonToGrid(polygon: Polygon, scale: number, cx: number, cy: number): GridShape {
  return gridShape(
    toGrid(polygon.outer, scale, cx, cy),
    polygon.holes.map((hole) => toGrid(hole, scale, cx, cy)),
  );
}

/** The ring through an orientation, rounded to the grid; winding kept. */
export function turnedOnGrid(ring: Ring, cos: number, sin: number, flip: number): Ring {
  const n = ring.length;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i += 2) {
    const x = flip * ring[i]!;
    const y = ring[i + 1]!;
    const at = flip < 0 ? n - 2 - i : i;
    out[at] = Math.round(cos * x - sin * y) + 0;
    out[at + 1] = Math.round(sin * x + cos * y) + 0;
  }
  return out;
}

/** The grid shape through an orientation. */
export function turnedShape(shape: GridShape, cos: number, sin: number, flip: number): GridShape {
  if (cos === 1 && sin === 0 && flip === 1) return shape;
  const turn = (ring: Ring): Ring => turnedOnGrid(ring, cos, sin, flip);
  // At an odd turn every corner is rounded anew, and a part with edges of a few units, as offsets leave them, may be
  // convex no more: its cycle would wind the wrong way and leave a hole in the no-fit polygon. So parts are cut afresh.
  if (cos * sin !== 0) return gridShape(turn(shape.outer), shape.holes.map(turn));
  return {
    outer: turn(shape.outer),
    holes: shape.holes.map(turn),
    parts: shape.parts.map(turn),
    solidParts: shape.solidParts.map(turn),
  };
}

/** A key equal for rings that trace the same outline from any start. */
function ringKey(ring: Ring): string {
  const points: string[] = [];
  for (let i = 0; i < ring.length; i += 2) points.push(`${ring[i]},${ring[i + 1]}`);
  let first = 0;
  for (let i = 1; i < points.length; i++) if (points[i]! < points[first]!) first = i;
  return points.slice(first).concat(points.slice(0, first)).join(" ");
}

/** A key equal for shapes that are the same set of points once turned. */
export function shapeKey(shape: GridShape, cos = 1, sin = 0, flip = 1): string {
  const holes = shape.holes.map((ring) => ringKey(turnedOnGrid(ring, cos, sin, flip))).sort();
  return [ringKey(turnedOnGrid(shape.outer, cos, sin, flip)), ...holes].join("|");
}

/** Units per mm: the largest extent just inside the exact range, rounded down to a number that keeps decimals whole. */
export function gridScale(extent: number): number {
  const raw = (CLIPPER_RANGE * 0.97) / extent;
  const step = Number(`1e${Math.floor(Math.log10(raw) - 1)}`);
  return Math.floor(raw / step) * step;
}

/** Diagonal of the ring's box. */
export function boxDiagonal(ring: Ring): number {
  const box = ringBox(ring);
  return Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
}

/** Longer side of the ring's box. */
export function boxExtent(ring: Ring): number {
  const box = ringBox(ring);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

/** Centre of the ring's box. */
export function boxCentre(ring: Ring): [number, number] {
  const box = ringBox(ring);
  return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
}

/** The ring wound counter-clockwise. */
export function counterClockwise(ring: Ring): Ring {
  return signedArea(ring) < 0 ? reversedRing(ring) : ring;
}

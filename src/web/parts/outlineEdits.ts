import type { Contour } from "../../core/geometry/contour.ts";

/** A corner of an outline, mm. */
export interface Corner {
  readonly x: number;
  readonly y: number;
}

/** The corners of a contour in order. */
export function cornersOf({ vertices }: Contour): readonly Corner[] {
  const corners: Corner[] = [];
  for (let i = 0; i < vertices.length; i += 3) corners.push({ x: vertices[i]!, y: vertices[i + 1]! });
  return corners;
}

/** The contour with corner `index` at (x, y); arcs beside it keep their bulge. */
export function moveCorner(contour: Contour, index: number, x: number, y: number): Contour {
  const vertices = contour.vertices.slice();
  vertices[3 * index] = x;
  vertices[3 * index + 1] = y;
  return { ...contour, vertices };
}

/** The contour with a new corner in the middle of the chord of edge `index`, which becomes straight. */
export function addCorner(contour: Contour, index: number): Contour {
  const { vertices } = contour;
  const n = vertices.length / 3;
  const next = (index + 1) % n;
  const middle = [
    (vertices[3 * index]! + vertices[3 * next]!) / 2,
    (vertices[3 * index + 1]! + vertices[3 * next + 1]!) / 2,
  ];
  const before = [...vertices.slice(0, 3 * index + 2), 0];
  return { ...contour, vertices: Float64Array.from([...before, ...middle, 0, ...vertices.slice(3 * index + 3)]) };
}

/** The contour without corner `index`; at least three corners stay. */
export function removeCorner(contour: Contour, index: number): Contour {
  const vertices = [...contour.vertices];
  if (vertices.length <= 9) return contour;
  vertices.splice(3 * index, 3);
  return { ...contour, vertices: Float64Array.from(vertices) };
}

/** Number of the corner at a place; `known` when none is there. Outlines are renumbered when they are turned round. */
export function cornerAt(contour: Contour, place: Corner, known: number): number {
  const found = cornersOf(contour).findIndex(({ x, y }) => x === place.x && y === place.y);
  return found < 0 ? known : found;
}

import type { Contour } from "./contour.ts";
import { offsetEdges } from "./offsetEdges.ts";

/**
 * A closed contour moved outward by `distance` ≥ 0 all round, corners mitred: `offsetEdges` with one width.
 *
 * Errors: RangeError when `distance` is negative or not finite.
 */
export function offsetContour(contour: Contour, distance: number): Contour {
  if (!(distance >= 0 && Number.isFinite(distance)))
    throw new RangeError(`offsetContour: a distance of 0 or more was expected, got ${distance}`);
  const edges = contour.vertices.length / 3;
  return offsetEdges(
    contour,
    Array.from({ length: edges }, () => distance),
  )!.contour;
}

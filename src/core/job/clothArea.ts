import { polygonArea } from "../geometry/ring.ts";
import type { StrapResult } from "../straps/build/strapResult.ts";

/** Outer cloth of a strap in all its copies, mm². */
export function clothArea({ pieces, wish }: StrapResult): number {
  return pieces
    .filter(({ materialId }) => materialId === wish.materials.outer)
    .reduce((sum, piece) => sum + piece.count * polygonArea(piece.outline), 0);
}

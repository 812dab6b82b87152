import type { LayPiece, LayProblem } from "../lay/problem/layProblem.ts";
import type { Material } from "../materials/material.ts";

/**
 * What a lay problem holds besides, where all pieces lie the same of two ways, or the parts of each bag are kept together.
 * Pieces that do not come in equal numbers for every bag belong to none.
 */
export function oneWayAndShade(
  { oneWay, shadeBand }: Material,
  bags: number,
  pieces: readonly LayPiece[],
): Pick<LayProblem, "sameWay" | "shade"> {
  const isShared = shadeBand !== undefined && pieces.every(({ count }) => count % bags === 0);
  return {
    ...(oneWay === "free" ? { sameWay: true } : {}),
    ...(isShared ? { shade: { bags, band: shadeBand } } : {}),
  };
}

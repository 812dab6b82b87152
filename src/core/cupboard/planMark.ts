import type { LayPlan } from "../lay/problem/layProblem.ts";

/** Offset basis and prime. Source: FNV-1a, 32 bit (draft-eastlake-fnv); the second start is the first turned round. */
const STARTS = [0x811c9dc5, 0xc59d1c81] as const;
const PRIME = 0x01000193;

/**
 * A mark of what some plans cut from what: the same lays have the same mark, whatever search found them. Not a secret,
 * only a name. Cost: O(placements).
 */
export function planMark(plans: readonly LayPlan[]): string {
  const lays = plans.map(({ materialId, placements, uses }) => [
    materialId,
    placements.map(({ stockId, pieceId, copy, x, y, turnDeg, mirrored }) => {
      return [stockId, pieceId, copy, x, y, turnDeg, mirrored];
    }),
    uses.filter(({ usedLength }) => usedLength > 0).map(({ stockId, usedLength }) => [stockId, usedLength]),
  ]);
  const text = JSON.stringify(lays);
  return STARTS.map((start) => {
    let hash: number = start;
    for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), PRIME) >>> 0;
    return hash.toString(16).padStart(8, "0");
  }).join("");
}

import type { Rng } from "../../../search/rng.ts";
import type { Guide } from "./beamMemory.ts";

/**
 * A guide drawn at random around values that did well alone; no one guide is best on all jobs, and the best of
 * several is clearly better than each. `blocks` and `hollows` as in `Guide`.
 */
export function guideOf(run: number, rng: Rng, blocks: boolean, hollows: Int32Array | null): Guide {
  const plain = run === 0;
  return {
    wasteFloor: plain ? 0.02 : 0.005 * 10 ** rng.unit(),
    mismatch: plain ? 1.05 : 1.01 + 0.1 * rng.unit(),
    perSegment: plain || rng.below(2) === 0 ? 0 : 0.06 * rng.unit(),
    blocks,
    hollows,
  };
}

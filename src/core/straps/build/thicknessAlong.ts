import type { ProfileSpan } from "../section/thicknessProfile.ts";
import type { StrapEnd } from "./strapLengths.ts";

/**
 * Layers and thickness along a finished strap, from its start: ends that are folded back or turned inside lie on
 * the strap itself and double it over their allowance.
 *
 * Units:  mm. Spans tile 0 … finished length.
 */
export function thicknessAlong(
  finished: number,
  ends: readonly [StrapEnd, StrapEnd],
  flat: { readonly layers: number; readonly thickness: number },
): readonly ProfileSpan[] {
  const doubled = (end: StrapEnd): number =>
    end.style === "raw" || end.style === "seam" ? 0 : Math.min(end.allowance, finished / 2);
  const stops = [0, doubled(ends[0]), finished - doubled(ends[1]), finished];
  const times = [2, 1, 2];
  return times.flatMap((factor, i): ProfileSpan[] => {
    const [from, to] = [stops[i]!, stops[i + 1]!];
    if (to - from < 1e-9) return [];
    return [{ from, to, layers: flat.layers * factor, thickness: flat.thickness * factor }];
  });
}

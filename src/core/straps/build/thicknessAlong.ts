import type { ProfileSpan } from "../section/thicknessProfile.ts";
import type { StrapEnd } from "./strapLengths.ts";

/** How often the strap lies on itself from an end inwards, as stretches of length. mm. */
function stretches(
  { style, allowance, under }: StrapEnd,
  most: number,
): { readonly mm: number; readonly times: number }[] {
  if (style === "raw" || style === "seam") return [];
  const back = Math.min(allowance - under, most);
  const turned = Math.min(under, back);
  return [
    { mm: back - turned, times: 2 },
    // The raw end that is turned under lies between the strap and what is folded back.
    { mm: turned, times: 3 },
  ].filter(({ mm }) => mm > 0);
}

/**
 * Layers and thickness along a finished strap, from its start: ends that are folded back or turned inside lie on
 * the strap itself and double it over their allowance, three times where their raw end is turned under.
 *
 * Units:  mm. Spans tile 0 … finished length.
 */
export function thicknessAlong(
  finished: number,
  ends: readonly [StrapEnd, StrapEnd],
  flat: { readonly layers: number; readonly thickness: number },
  endThickness: number = flat.thickness,
): readonly ProfileSpan[] {
  const end = Math.min(endThickness, flat.thickness);
  const first = stretches(ends[0], finished / 2);
  const last = stretches(ends[1], finished / 2).toReversed();
  const sum = [...first, ...last].reduce((total, { mm }) => total + mm, 0);
  const spans: ProfileSpan[] = [];
  let from = 0;
  for (const { mm, times } of [...first, { mm: finished - sum, times: 1 }, ...last]) {
    if (mm < 1e-9) continue;
    spans.push({ from, to: from + mm, layers: flat.layers * times, thickness: flat.thickness + (times - 1) * end });
    from += mm;
  }
  return spans;
}

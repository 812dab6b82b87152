import { mayLieAslant } from "./prepare.ts";
import type { RectangleJob } from "./rectangleJob.ts";
import { lengthOfEnd } from "./regionPlan.ts";
import type { SearchTables } from "./searchTables.ts";

/**
 * What a bound on the end in units proves of the length in mm. Null when a piece may lie aslant: the bound is one of
 * plans square to the roll. With a cutting gap it speaks of plans whose pieces are that far apart along or across.
 *
 * Pieces rounded up to a grid may rule out lengths that the true sizes allow, so then only the area counts, less what
 * rounding added.
 */
export function provenLength(prepared: RectangleJob, tables: SearchTables, bound: number): number | null {
  if (mayLieAslant(prepared.job)) return null;
  if (prepared.exact) return lengthOfEnd(prepared, bound);
  const least = Math.min(...tables.sizeLeastAcross, ...tables.sizeLeastAlong);
  const end = (tables.area / (tables.width + 1)) * Math.max(0, 1 - 4 / least);
  return Math.max(0, lengthOfEnd(prepared, end));
}

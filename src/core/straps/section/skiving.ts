import type { FoldChoices } from "../wish/strapWish.ts";
import type { Ply, StripPlan } from "./foldPlan.ts";

/** How thick the turned edges are: skived to what the maker says, never thicker than the layer. mm. */
export function turnedThickness(ply: Ply, { turnedThickness: to }: FoldChoices): number {
  return Math.min(to ?? ply.thickness, ply.thickness);
}

/**
 * A strip plan's record of its skived ends, to be spread into it; nothing where nothing is taken off.
 * Skiving takes the wrong side off from the raw edge to the fold line, so the fold goes round the full thickness of
 * the run beside it.
 */
export function skivedEnds(
  ply: Ply,
  choices: FoldChoices,
  ends: { readonly start: boolean; readonly end: boolean } = { start: true, end: true },
): Pick<StripPlan, "skived"> {
  const thickness = turnedThickness(ply, choices);
  return thickness < ply.thickness ? { skived: { thickness, ...ends } } : {};
}

/** Thickness of a strip's run number `run`, mm: its first and last may be skived. */
export function runThickness({ ply, levels, skived }: StripPlan, run: number): number {
  const thin = (run === 0 && skived?.start) || (run === levels.length - 1 && skived?.end);
  return thin ? skived!.thickness : ply.thickness;
}

/** Thickness in a strip's fold number `fold`, mm: that of the thinner run it joins. */
export function foldThickness(strip: StripPlan, fold: number): number {
  return Math.min(runThickness(strip, fold), runThickness(strip, fold + 1));
}

/** Least inside radius of that fold, mm: it shrinks with the thickness. */
export function foldLeastRadius(strip: StripPlan, fold: number): number {
  const { thickness, leastRadius } = strip.ply;
  return thickness > 0 ? (leastRadius * foldThickness(strip, fold)) / thickness : leastRadius;
}

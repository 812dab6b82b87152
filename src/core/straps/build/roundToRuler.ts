import { failed, type Result } from "../../problems/problem.ts";
import { MM_PER_UNIT } from "../../units/lengthWords.ts";
import type { PartNames } from "../../words/strapWords.ts";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import type { StrapResult } from "./strapResult.ts";

/**
 * The strap cut at the nearest division of her ruler, `step` mm, and the finished width that comes of it.
 *
 * Errors: those of the strap; a strap whose width a bought webbing settles has no other cut width.
 */
export function roundToRuler(
  wish: StrapWish,
  materials: readonly StrapMaterial[],
  step: number,
  names?: PartNames,
): Result<StrapResult> {
  const exact = buildStrap(wish, materials, "", names);
  if (!exact.ok) return exact;
  const { construction, core } = wish;
  if (core?.webbingWidth !== undefined)
    return failed({ code: "strap-choice-unused", path: "round", choice: "ruler", construction, heededBy: [] });
  return buildStrap({ ...wish, width: cutAt(exact.value.cutWidth, step) }, materials, "", names);
}

function cutAt(cutWidth: number, step: number): { readonly kind: "cut"; readonly mm: number } {
  return { kind: "cut", mm: Math.max(1, Math.round(cutWidth / step)) * step };
}

/** A cut width that her ruler has, and the finished width it results in. mm. */
export interface RulerOffer {
  readonly step: number;
  readonly cutWidth: number;
  readonly finishedWidth: number;
}

/** Divisions worth setting a ruler to, finer ones first, mm (common practice, no source). */
const STEPS: Readonly<Record<"metric" | "inches", readonly [fine: number, coarse: number]>> = {
  metric: [1, 5],
  inches: [MM_PER_UNIT.in / 16, MM_PER_UNIT.in / 8],
};

/** Her ruler has the width already. */
const SAME = 1e-6;

/**
 * Cut widths on the divisions of her ruler near a strap's own one, each once; none where its own is on one, is asked
 * for as it is, or follows from a webbing. `down`: none wider than its own, which has its place in a plan.
 */
export function rulerOffers(
  { wish, cutWidth }: StrapResult,
  materials: readonly StrapMaterial[],
  system: "metric" | "inches",
  way: "nearest" | "down" = "nearest",
): readonly RulerOffer[] {
  if (wish.width?.kind !== "finished" || wish.core?.webbingWidth !== undefined) return [];
  const [fine] = STEPS[system];
  if (Math.abs(Math.round(cutWidth / fine) * fine - cutWidth) < SAME) return [];
  const offers = STEPS[system].flatMap((step): RulerOffer[] => {
    const near = way === "down" ? Math.floor(cutWidth / step) * step : cutWidth;
    const built = buildStrap({ ...wish, width: cutAt(near, step), cutBy: undefined }, materials);
    return built.ok ? [{ step, cutWidth: built.value.cutWidth, finishedWidth: built.value.finishedWidth }] : [];
  });
  return offers.filter((one, i) => i === 0 || Math.abs(one.cutWidth - offers[i - 1]!.cutWidth) > SAME);
}

import type { SectionPlan, Side, StripPlan } from "./foldPlan.ts";
import { foldLeastRadius, foldThickness } from "./skiving.ts";

/** How far inside the strap the face run's fold on this side ends; 0 where the face runs to a raw edge. */
function foldReach(strip: StripPlan, side: Side): number {
  for (const fold of [strip.face - 1, strip.face]) {
    if (fold < 0 || fold >= strip.levels.length - 1) continue;
    const toward = (fold % 2 === 0) === (strip.firstFold === "left") ? "left" : "right";
    if (toward !== side) continue;
    const outside = strip.outsides?.[fold];
    return (outside?.from === side ? outside.mm : 0) + foldLeastRadius(strip, fold) + foldThickness(strip, fold);
  }
  return 0;
}

/**
 * The plan with a strip of interfacing laid under one strip's face only (the part that shows), between its two fold
 * lines. Levels from there on move up by one, so folds that pass it wrap it too.
 */
export function withFaceInterfacing(plan: SectionPlan, thickness: number, onto = 0): SectionPlan {
  const strip = plan.strips[onto]!;
  const face = strip.levels[strip.face]!;
  const neighbours = strip.levels.filter((level) => level !== face);
  const below = neighbours.length > 0 && neighbours.every((level) => level < face);
  const slab = below ? face : face + 1;
  const moved = (level: number): number => (level >= slab ? level + 1 : level);
  const [insetLeft, insetRight] = [foldReach(strip, "left"), foldReach(strip, "right")];
  return {
    ...plan,
    strips: plan.strips.map((one) => {
      const levels = one.levels.map(moved);
      if (!one.wraps) return { ...one, levels };
      return { ...one, levels, wraps: one.wraps.map((wrapped) => wrapped.map(moved)) };
    }),
    slabs: [
      ...plan.slabs.map((one) => ({ ...one, level: moved(one.level) })),
      { role: "interfacing", level: slab, thickness, insetLeft, insetRight, square: false },
    ],
  };
}

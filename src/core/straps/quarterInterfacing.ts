import type { SectionPlan } from "./foldPlan.ts";

/**
 * The plan with a strip of interfacing laid under the first strip's face only (the quarter that shows), between its
 * two fold lines. Levels from there on move up by one, so folds that pass it wrap it too.
 */
export function withFaceInterfacing(plan: SectionPlan, thickness: number): SectionPlan {
  const strip = plan.strips[0]!;
  const face = strip.levels[strip.face]!;
  const neighbours = strip.levels.filter((level) => level !== face);
  const below = neighbours.length > 0 && neighbours.every((level) => level < face);
  const slab = below ? face : face + 1;
  const moved = (level: number): number => (level >= slab ? level + 1 : level);
  const reach = strip.ply.leastRadius + strip.ply.thickness;
  return {
    ...plan,
    strips: plan.strips.map((one) => {
      const levels = one.levels.map(moved);
      if (!one.wraps) return { ...one, levels };
      return { ...one, levels, wraps: one.wraps.map((wrapped) => wrapped.map(moved)) };
    }),
    slabs: [
      ...plan.slabs.map((one) => ({ ...one, level: moved(one.level) })),
      { role: "interfacing", level: slab, thickness, insetLeft: reach, insetRight: reach, square: false },
    ],
  };
}

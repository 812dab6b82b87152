import type { MaterialKind } from "../../materials/material.ts";
import type { FoldChoices, StrapMaterial } from "../wish/strapWish.ts";
import type { Ply, PlyRole } from "./foldPlan.ts";

/** K when nothing is known: the middle of the thickness. */
const MIDDLE = 0.5;

/** Least inside radius as a share of the thickness (from memory): cork cracks when creased sharply. */
const LEAST_RADIUS: Partial<Record<MaterialKind, number>> = { cork: 0.5 };

/** A soft fold of a material without a radius of its own: half its thickness. */
const SOFT_RADIUS = 0.5;

/** One layer as it folds: the fold test's values where there are any, else the defaults of its kind. */
export function plyOf(role: PlyRole, material: StrapMaterial, fusedThickness: number, choices: FoldChoices): Ply {
  const thickness = material.thickness + fusedThickness;
  const own = material.fold.leastRadius ?? (LEAST_RADIUS[material.kind] ?? 0) * thickness;
  const soft = own > 0 ? own : SOFT_RADIUS * thickness;
  const leastRadius = choices.crease === "hard" ? 0 : choices.crease === "soft" ? soft : own;
  return { role, thickness, neutral: material.fold.neutral ?? MIDDLE, leastRadius };
}

/** The same layer without any thickness: what the round rules of the trade assume. */
export function withoutThickness(ply: Ply): Ply {
  return { ...ply, thickness: 0, leastRadius: 0 };
}

/**
 * Length of strip used by a bend, measured where the material keeps its length.
 *
 * Units: angle in radians, the rest mm; `neutral` (K) 0 at the inner face, 0.5 in the middle.
 * Errors: none; a negative radius gives a shorter bend.
 * Source: bend allowance of sheet bending, BA = A (R + K T), engineering handbooks (from memory).
 */
export function bendAllowance(angle: number, insideRadius: number, thickness: number, neutral: number): number {
  return angle * (insideRadius + neutral * thickness);
}

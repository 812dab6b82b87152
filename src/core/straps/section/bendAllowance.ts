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

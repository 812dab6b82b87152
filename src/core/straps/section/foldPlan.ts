import type { MaterialRoles } from "../wish/strapWish.ts";

/** Left and right long edge of the finished strap, looking along it. */
export type Side = "left" | "right";

export type PlyRole = keyof MaterialRoles;

/** One layer of cloth as it folds. mm. */
export interface Ply {
  readonly role: PlyRole;
  readonly thickness: number;
  /** K, see `bendAllowance`. */
  readonly neutral: number;
  /** Least inside radius the material keeps in a fold; 0 for a hard crease. */
  readonly leastRadius: number;
}

/** A place across the strap: `mm` in from a side of the finished strap, or `mm` to the right of its middle. */
export interface AcrossPlan {
  readonly from: Side | "middle";
  readonly mm: number;
}

/**
 * Where a raw edge stops. With `corner` it does not stop there but turns round the end of a square core and goes on
 * for `rise`.
 */
export interface EdgePlan extends AcrossPlan {
  readonly corner?: { readonly rise: number; readonly up: boolean };
}

/**
 * One strip as a path through the section, in flat order from its lower edge: a run on each level named, and
 * between two runs a fold, the first on side `firstFold`, the next on the other side and so on.
 */
export interface StripPlan {
  readonly ply: Ply;
  /** Level of each run, 0 at the bottom of the stack. At least one. */
  readonly levels: readonly number[];
  /** The side the first run leads to. */
  readonly firstFold: Side;
  readonly start: EdgePlan;
  readonly end: EdgePlan;
  /** Where the outside of each fold lies; the outside of the strap on the fold's own side where absent. */
  readonly outsides?: readonly AcrossPlan[];
  /** Levels each fold wraps; every level between its two runs where absent. */
  readonly wraps?: readonly (readonly number[])[];
  /** Turned edges skived on their wrong side up to the fold line: what is left there, mm, and at which ends. */
  readonly skived?: { readonly thickness: number; readonly start: boolean; readonly end: boolean };
  /** Index of the run whose outer face is the strap's face. */
  readonly face: number;
}

/** A flat core lying on a level: webbing, padding or a strip of interfacing. mm. */
export interface SlabPlan {
  readonly role: PlyRole;
  readonly level: number;
  readonly thickness: number;
  readonly insetLeft: number;
  readonly insetRight: number;
  /** A square core is wrapped by two corners with a straight side between, a soft one by a half circle. */
  readonly square: boolean;
}

/** The cross-section of a strap before its width is known: construction as data. */
export interface SectionPlan {
  readonly strips: readonly StripPlan[];
  readonly slabs: readonly SlabPlan[];
  /** Levels sink where a lower one ends (seam allowances), instead of keeping their height right across. */
  readonly settles: boolean;
}

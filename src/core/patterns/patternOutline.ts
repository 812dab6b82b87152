import type { Box } from "../geometry/box.ts";
import type { Contour } from "../geometry/contour.ts";
import type { PatternProblem } from "../problems/patternProblems.ts";
import type { Curve } from "./curve.ts";
import type { LineLook, PatternKind, PatternMark, TablePicture } from "./patternDrawing.ts";

/** What a line of a pattern is for. `other`: frames, labels, the page itself. */
export const PATTERN_ROLES = ["cut", "stitch", "fold", "notch", "grain", "drill", "mark", "other"] as const;
export type PatternRole = (typeof PATTERN_ROLES)[number];

/** What a role was told by, in the order in which it is believed. */
export type RoleReason = "asked" | "name" | "layer" | "dash" | "nesting" | "size" | "place";

/** A line of a pattern as it was understood; mm, y up. */
export interface PatternOutline extends LineLook {
  readonly role: PatternRole;
  readonly reason: RoleReason;
  /** As drawn. Closed ones run counter-clockwise. */
  readonly curve: Curve;
  readonly closed: boolean;
  /** As straight edges and arcs within the stated tolerance. */
  readonly contour: Contour;
  readonly box: Box;
  /** Area of the outline itself, whatever lies in it; 0 for an open line. */
  readonly areaMm2: number;
  /** Index of the smallest closed outline that holds it; null when none does. */
  readonly inside: number | null;
}

/** Everything that was understood of a pattern file. */
export interface UnderstoodPattern {
  readonly kind: PatternKind;
  readonly outlines: readonly PatternOutline[];
  readonly marks: readonly PatternMark[];
  readonly problems: readonly PatternProblem[];
  /** The photograph that it came from, straightened; only where it was asked for. */
  readonly picture?: TablePicture | undefined;
}

import type { Box } from "../geometry/box.ts";
import type { PatternProblem } from "../problems/patternProblems.ts";
import type { Curve } from "./curve.ts";

/** What a pattern can be read from. */
export type PatternKind = "svg" | "dxf" | "pdf" | "image";

/** How a line is drawn and where it stands in its file: what it is told apart by. */
export interface LineLook {
  /** The drawn thing's own name, or that of the nearest group that has one; empty when nothing is named. */
  readonly name: string;
  /** Layer, or the name of the nearest group; empty when there is none. */
  readonly layer: string;
  /** Names of all that holds it, innermost first, its own and its layer included. */
  readonly names: readonly string[];
  /** `#rrggbb` of the line, or of the filling when only that is drawn; null when the file leaves it open. */
  readonly color: string | null;
  /** Dashes and spaces in turn, mm; empty for a whole line. */
  readonly dash: readonly number[];
}

/** A line that is drawn and can be seen, in mm, y up. */
export interface PatternLine extends LineLook {
  readonly curve: Curve;
}

/** A text or a single point in a drawing, mm, y up. */
export interface PatternMark {
  readonly kind: "text" | "point";
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly layer: string;
}

/** A photograph straightened: what lies on the table in `box`, mm, row after row from the top, 0 black to 255 white. */
export interface TablePicture {
  readonly box: Box;
  readonly width: number;
  readonly height: number;
  readonly gray: Uint8Array;
}

/** What a reader took from a file, before anything is understood of it. */
export interface PatternDrawing {
  readonly kind: PatternKind;
  /** What one step of the file was taken for: its name in `PATTERN_UNITS`, and mm. */
  readonly unit: { readonly name: string; readonly ofMm: number };
  readonly lines: readonly PatternLine[];
  readonly marks: readonly PatternMark[];
  /** What was found on the way; `pattern-unit-assumed` among them when the file does not say how large it is. */
  readonly problems: readonly PatternProblem[];
  /** The straightened photograph, where it was asked for. */
  readonly picture?: TablePicture | undefined;
}

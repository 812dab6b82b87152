import type { PatternLine } from "../../core/patterns/patternDrawing.ts";
import type { PageFrame } from "./pageFrame.ts";

/** A page as it was read, mm from its lower-left corner. */
export interface ReadPage {
  readonly frame: PageFrame;
  readonly lines: readonly PatternLine[];
  readonly texts: readonly PageText[];
}

/** A text with its height, mm. */
export interface PageText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

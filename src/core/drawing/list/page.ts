import type { Box } from "../../geometry/box.ts";
import type { DrawingItem } from "./drawing.ts";

/** Items laid on a page: a drawing point (px, py) comes to (x + scaleX · px, y + scaleY · py) on the paper, in mm. */
export interface PagePart {
  readonly items: readonly DrawingItem[];
  readonly x: number;
  readonly y: number;
  readonly scaleX: number;
  readonly scaleY: number;
  /** Nothing outside it is shown, mm on the paper. */
  readonly clip: Box | null;
}

/**
 * One page of paper as a display list: origin at its lower-left corner, y up, mm. Line widths are as on paper
 * whatever the scale of a part; text is scaled with its part.
 */
export interface Page {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly parts: readonly PagePart[];
}

/** Items drawn in paper millimetres. */
export function paperPart(items: readonly DrawingItem[]): PagePart {
  return { items, x: 0, y: 0, scaleX: 1, scaleY: 1, clip: null };
}

import type { Box } from "../../geometry/box.ts";
import type { Contour } from "../../geometry/contour.ts";
import type { DrawingRole } from "../../project/outputSettings.ts";

/**
 * What a filled area stands for; adapters choose the colour or texture. `face` and `back` are the two sides of
 * the main cloth, `facing` the cloth of the facing, `interfacing` and `webbing` what stiffens it, `piece` a piece lying
 * on cloth, `cloth` the stock itself, `flaw` a part of it not to be used, `ink` solid black, `pattern` stripes and motifs of
 * the cloth, `shade` a light tint.
 */
export type AreaTone =
  | "cloth"
  | "piece"
  | "flaw"
  | "face"
  | "back"
  | "facing"
  | "interfacing"
  | "webbing"
  | "ink"
  | "pattern"
  | "shade";

/** A line; arcs are kept. */
export interface DrawnLine {
  readonly kind: "line";
  readonly role: DrawingRole;
  readonly contour: Contour;
  /** The piece copy it belongs to (see `pieceKey`), so that a screen can pick it up and a page can name it. */
  readonly owner?: string;
}

/** A filled area without a line of its own; holes by the even-odd rule. */
export interface DrawnArea {
  readonly kind: "area";
  readonly tone: AreaTone;
  /** Closed contours. */
  readonly contours: readonly Contour[];
  readonly owner?: string;
}

/** One line of text. Adapters write it as text (never as markup) and show a mark where a glyph is missing. */
export interface DrawnText {
  readonly kind: "text";
  readonly role: DrawingRole;
  readonly text: string;
  /** Where the anchor lies, mm; the baseline runs through it. */
  readonly x: number;
  readonly y: number;
  /** Height of the em square, mm. Capitals are about 0.7 of it high. */
  readonly size: number;
  readonly anchor: "start" | "middle" | "end";
  /** Counter-clockwise turn of the baseline, degrees. */
  readonly turnDeg: number;
  readonly bold?: boolean;
  /** Colour other than its role's, for large pale letters. */
  readonly tone?: AreaTone;
  readonly owner?: string;
}

export type DrawingItem = DrawnLine | DrawnArea | DrawnText;

/**
 * A display list: what every adapter (SVG, PDF, DXF, screen) turns into its own marks and nothing more.
 * Units mm, y up. Items are drawn in order. `box` is the area to show; items may stick out of it.
 */
export interface Drawing {
  readonly box: Box;
  readonly items: readonly DrawingItem[];
}

/** Owner key of one copy of a piece. */
export function pieceKey(pieceId: string, copy: number): string {
  return `${pieceId}#${copy}`;
}

import { isRectangle } from "../geometry/box.ts";
import type { Contour } from "../geometry/contour.ts";
import type { Polygon } from "../geometry/ring.ts";

/**
 * Which straight grain the piece's own x axis must follow. `free` leaves any turn to the cloth's own rule.
 * A bias direction cannot be said at all: pieces never lie on the bias.
 */
export const PIECE_GRAINS = ["either", "lengthwise", "crosswise", "free"] as const;

export type PieceGrain = (typeof PIECE_GRAINS)[number];

/** What a line drawn on or around a piece is for. Adapters map roles to layers and strokes. */
export type LineRole = "cut" | "fold" | "stitch" | "tape" | "mark";

/** What a line along a strip is. */
export type LineNote = "fold" | "tape" | "seam" | "topstitch" | "trim" | "notch";

/** A line on a piece, in the piece's own frame (mm). */
export interface PieceLine {
  readonly role: Exclude<LineRole, "cut">;
  readonly contour: Contour;
  /** What it is, where the role alone does not say. */
  readonly note?: LineNote;
  /** Words beside its end, such as the letter of a match mark. */
  readonly text?: string;
}

/** A place on a seam line where the cloth's pattern is to meet that of another piece, in the piece's own frame (mm). */
export interface MatchPlace {
  /** Which match of the project, and which side of it. */
  readonly match: number;
  readonly side: "first" | "second";
  readonly x: number;
  readonly y: number;
  /** Direction out of the piece. */
  readonly out: readonly [number, number];
}

/** One outline to cut, with what is drawn on it and how many are needed. */
export interface CutPiece {
  /** Unique in the cut list and stable between runs. */
  readonly id: string;
  readonly name: string;
  /** The strap or panel it belongs to. */
  readonly partId: string;
  readonly materialId: string;
  readonly kind: "strip" | "panel";
  /** Cut line with its arcs; x along the piece's own grain arrow, origin at the lower-left of the box. */
  readonly contour: Contour;
  /** Cut line flattened to within 0.01 mm; what the lay and the checker work on. */
  readonly outline: Polygon;
  readonly lines: readonly PieceLine[];
  /** Pieces needed as drawn. */
  readonly count: number;
  /** Mirror images needed besides. */
  readonly mirroredCount: number;
  readonly grain: PieceGrain;
  readonly matchPlaces?: readonly MatchPlace[] | undefined;
  /** One of several lengths that are sewn end to end: a part of a strap, not a strap. */
  readonly joined?: true;
  /** True for a panel that was drawn as a half on a fold: on cloth folded lengthwise it lies on the fold. */
  readonly onFold?: boolean;
  /** How its cloth is spread for cutting, where it is. */
  readonly spread?: "folded" | "layers";
  /** True for the half that lies there: the contour's closing edge is the fold and is not cut. */
  readonly foldEdge?: boolean;
}

/** mm that a ruler, or an eye on paper, cannot tell from nothing. */
const STRAIGHT = 0.05;

/** Whether a piece is a rectangle along the grain: cut by its size. Every other piece has edges to follow. */
export function isCutBySize({ outer, holes }: Polygon): boolean {
  return holes.length === 0 && isRectangle(outer, STRAIGHT);
}

import type { Orientation, Pose } from "../../geometry/pose.ts";
import type { Polygon } from "../../geometry/ring.ts";

/**
 * A kind of piece to lay. Mirror images that are needed besides are a piece of their own with a mirrored
 * outline; `orientations` holds mirrored ones only where both faces of the cloth are alike.
 */
export interface LayPiece {
  readonly id: string;
  /** mm, in the piece's own frame. */
  readonly outline: Polygon;
  readonly count: number;
  /** Allowed orientations; never empty. */
  readonly orientations: readonly Orientation[];
  /** True when any turn is allowed (felt, foam, some leather); `orientations` then are only good starts. */
  readonly freeTurn: boolean;
}

/** A roll: x along it from its cut end, y across from the lower selvedge's inner edge. */
export interface RollStock {
  readonly kind: "roll";
  readonly id: string;
  /** Usable width between the selvedges, mm. */
  readonly width: number;
  /** mm; null when as much as needed can be bought. */
  readonly length: number | null;
  readonly flaws: readonly Polygon[];
}

/** A remnant or a skin: any outline, x along the lengthwise grain; holes are unusable. */
export interface RemnantStock {
  readonly kind: "remnant";
  readonly id: string;
  readonly outline: Polygon;
  readonly flaws: readonly Polygon[];
}

export type Stock = RollStock | RemnantStock;

/** One lay problem: one material. Open dimension when the last stock is an open roll, else heterogeneous knapsack. */
export interface LayProblem {
  readonly materialId: string;
  readonly pieces: readonly LayPiece[];
  /** In the order they are to be used up: leftovers first. */
  readonly stocks: readonly Stock[];
  /** Least distance between pieces, and from a piece to a flaw, mm. */
  readonly gap: number;
  /** Least distance from a piece to the edge of the stock, mm. */
  readonly margin: number;
  /** Pieces the maker has put down by hand; the search works around them. */
  readonly pinned: readonly StockPlacement[];
}

/** One copy of a piece laid down in a region: rotate and mirror about its own origin, then shift. */
export interface Placement extends Pose {
  readonly pieceId: string;
  /** 0 … count − 1. */
  readonly copy: number;
}

/** A placement and the stock it lies on. */
export interface StockPlacement extends Placement {
  readonly stockId: string;
}

/** Why a piece was left out. */
export const UNPLACED_REASONS = ["too-long-for-width", "too-large-for-stock", "stock-used-up", "no-stock"] as const;

export type UnplacedReason = (typeof UNPLACED_REASONS)[number];

export interface Unplaced {
  readonly pieceId: string;
  readonly count: number;
  readonly reason: UnplacedReason;
}

/** What a stock gave. */
export interface StockUse {
  readonly stockId: string;
  /** Length used, mm: to the far side of the furthest piece plus the margin. 0 when untouched. */
  readonly usedLength: number;
  /** Proven shortest length for the pieces laid here when the stock is an open roll, else null. */
  readonly bound: number | null;
}

/** A placement of all pieces on stock, as the search leaves it; trusted only after the checker has passed it. */
export interface LayPlan {
  readonly materialId: string;
  readonly placements: readonly StockPlacement[];
  readonly unplaced: readonly Unplaced[];
  readonly uses: readonly StockUse[];
  readonly evaluations: number;
  readonly seed: number;
}

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

/** A measured leftover or a skin: any outline, x along the lengthwise grain; holes are unusable. */
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
export type UnplacedReason = "too-long-for-width" | "too-large-for-stock" | "stock-used-up" | "no-stock";

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

/** One region of cloth: the box 0…length × 0…width, an outline inside it when it is no rectangle, and flaws. */
export interface Region {
  readonly width: number;
  /** null when open. */
  readonly length: number | null;
  readonly outline: Polygon | null;
  readonly flaws: readonly Polygon[];
}

/** What an engine works on: one region. */
export interface RegionJob {
  readonly region: Region;
  readonly pieces: readonly LayPiece[];
  readonly gap: number;
  readonly margin: number;
  readonly pinned: readonly Placement[];
  /**
   * `shortest`: all pieces on an open region, least length.
   * `most`: as much piece area as fits in a closed region (then, at equal area, least length).
   */
  readonly goal: "shortest" | "most";
}

/** A plan for one region. Complete when `left` is all zero. */
export interface RegionPlan {
  readonly placements: readonly Placement[];
  /** Copies of each piece (by index in the job) that were not placed. */
  readonly left: readonly number[];
  /** Far side of the furthest piece plus the margin, mm. */
  readonly length: number;
}

/** One turn of a search. `plan` is set only when it is better than every one before. */
export interface SearchStep {
  /** Evaluations spent so far by this search. */
  readonly evaluations: number;
  readonly plan: RegionPlan | null;
  /** Best proven lower bound on the length so far (shortest) or on the area left out (most), else null. */
  readonly bound: number | null;
  /** A pause inside a turn: no plan, no news, `evaluations` as told last; it does not count as a turn. */
  readonly isBreath?: true;
}

/**
 * A packing engine. `search` yields at least every 20 ms on this class of machine (turns, and breaths inside them), so
 * a host can stop it by not calling `next()`; it returns when its budget is spent or the plan is proven. A host may pass a better plan
 * found elsewhere to `next(plan)`; the engine may go on from it. Results depend on arguments alone.
 */
export interface Engine {
  readonly id: string;
  /** Whether its plans are only a start for the others: once beaten it hardly gets turns in a race. */
  readonly isStart?: boolean;
  /** Whether the engine can take the job at all (e.g. rectangles only). */
  accepts(job: RegionJob): boolean;
  search(job: RegionJob, budget: SearchBudget, seed: number): Search;
}

export interface SearchBudget {
  /** Evaluations the search may spend; Infinity when the host stops it. */
  readonly evaluations: number;
}

export type Search = Generator<SearchStep, RegionPlan, RegionPlan | undefined>;

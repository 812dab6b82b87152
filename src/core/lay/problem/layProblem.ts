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
  /** What of the cloth's pattern it must lie on, if anything; its orientations then are quarter turns. */
  readonly match?: LayMatch | undefined;
  /** What one copy gives where several layers are cut at once; one piece of this id where nothing is said. */
  readonly gives?: LayerYield | undefined;
  /** Degrees by which the piece may lie off its orientations, up to 5; 0 when absent. */
  readonly tilt?: number;
}

/** Whether a piece may lie at turns besides its `orientations`. */
export function isLoose({ freeTurn, tilt = 0 }: Pick<LayPiece, "freeTurn" | "tilt">): boolean {
  return freeTurn || tilt > 0;
}

/** The pattern of a cloth: lines or motifs that repeat along it, across it or both. mm. */
export interface LayPattern {
  /** From one line (or row of motifs) to the next along the roll; null where nothing repeats. */
  readonly along: number | null;
  readonly across: number | null;
  /** Where the first line lies: from the start of the stock along it, and from its lower edge. */
  readonly firstAlong: number;
  readonly firstAcross: number;
  /** Every second column of motifs across is moved along by half a repeat. */
  readonly halfDrop: boolean;
  /** Looks the same turned by half: a matched piece may then lie either way up. */
  readonly symmetric: boolean;
  /** How far apart two places that are to meet may lie. */
  readonly tolerance: number;
}

/**
 * A place of a piece that has to lie on the pattern as the same places of its group do: with `φ` the group's phase,
 * `x − first ≡ σ φ` modulo the repeat, where σ says whether the piece is read with or against the cloth.
 */
export interface LayMatch {
  readonly group: string;
  /** The place in the piece's own frame, mm. */
  readonly x: number;
  readonly y: number;
  /** −1 where the piece's own axis is read backwards, as on a mirror image or over a seam. */
  readonly senseX: 1 | -1;
  readonly senseY: 1 | -1;
  /** Which of the cloth's repeats are matched; both where motifs are dropped by half. */
  readonly along: boolean;
  readonly across: boolean;
}

/** How far from a line the places of a group lie, mm; null where the search may choose. */
export interface LayPhase {
  readonly along: number | null;
  readonly across: number | null;
}

/** The pieces that come of one copy laid on several layers. */
export interface LayerYield {
  /** The piece of the cut list. */
  readonly of: string;
  /** As drawn, and mirror images of it; a piece that is as good either way counts as drawn. */
  readonly asDrawn: number;
  readonly mirrored: number;
  /** Half a piece: its lower edge, y = 0 in its own frame, lies on the fold of the cloth. */
  readonly onFold: boolean;
}

/** Layers of cloth that are cut at once, and what must come of them. */
export interface LaySpread {
  readonly layers: number;
  readonly faces: "up" | "together";
  /** Folded lengthwise: the fold is at y = 0, the selvedges lie on each other at the far side. */
  readonly folded: boolean;
  /** Both faces of the cloth can be the outside. */
  readonly facesAlike: boolean;
  readonly asked: readonly AskedPiece[];
}

/** How many of a piece are needed, by hand; a piece that is as good either way is asked for as drawn. */
export interface AskedPiece {
  readonly pieceId: string;
  readonly asDrawn: number;
  readonly mirrored: number;
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
  /** Where the first line of the pattern lies, along and across, where not as the pattern says. */
  readonly firstLine?: readonly [number, number] | undefined;
  /** Folded lengthwise, with the fold at y = 0; `width` is then half the cloth's. */
  readonly folded?: true;
}

/** A remnant or a skin: any outline, x along the lengthwise grain; holes are unusable. */
export interface RemnantStock {
  readonly kind: "remnant";
  readonly id: string;
  readonly outline: Polygon;
  readonly flaws: readonly Polygon[];
  /** Where a line of the pattern lies, along and across; what is matched is not laid where that is unknown. */
  readonly firstLine?: readonly [number, number] | undefined;
}

export type Stock = RollStock | RemnantStock;

/** The parts of one bag come from one band of the cloth, so that they are of one shade. */
export interface LayShade {
  /** Copies of each piece are shared out among the bags in order: the first of them to the first bag, and so on. */
  readonly bags: number;
  /** Length along the stock within which the parts of one bag lie, mm. */
  readonly band: number;
}

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
  /** Ruler plans leave no strip narrower than this where little more cloth spares it, mm; any will do when absent. */
  readonly leastStrip?: number | undefined;
  /** Pieces the maker has put down by hand; the search works around them. */
  readonly pinned: readonly StockPlacement[];
  /** The cloth's pattern, where pieces are matched. */
  readonly pattern?: LayPattern | undefined;
  /** Phases of the groups that are matched; a group that is not named is free. */
  readonly phases?: Readonly<Record<string, LayPhase>> | undefined;
  /** All pieces lie the same way along the cloth, whichever: their turns allow both. */
  readonly sameWay?: true | undefined;
  /** Where the parts of each bag are to be kept together; counts then are whole numbers a bag. */
  readonly shade?: LayShade | undefined;
  /** Where several layers are cut at once; copies of pieces are then those laid on top. */
  readonly spread?: LaySpread | undefined;
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
export const UNPLACED_REASONS = [
  "too-long-for-width",
  "too-large-for-stock",
  "no-room-on-pattern",
  "band-too-short",
  "stock-used-up",
  "no-stock",
] as const;

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
  /** What it counts as longer where plans are weighed, for strips too narrow for the ruler, mm. */
  readonly toll?: number | undefined;
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

import type { CostSheet } from "../../buying/costSheet.ts";
import type { StockOffcuts } from "../../buying/planOffcuts.ts";
import type { Purchase } from "../../buying/purchase.ts";
import type {
  LayerYield,
  LayMatch,
  LayPattern,
  LayPhase,
  LayPiece,
  LayShade,
  LaySpread,
  Stock,
  StockPlacement,
  UnplacedReason,
} from "../../lay/problem/layProblem.ts";
import type { LeftOut } from "../../problems/layProblems.ts";
import type { PlanCut } from "../planCut.ts";

/** Points of an outline in turn, mm. */
export type Points = readonly (readonly [number, number])[];

/** An outline as data: points in mm, holes apart. */
export interface OutlineData {
  readonly points: Points;
  readonly holes: readonly Points[];
}

/** What a plan file holds: everything that is needed to verify it, and everything a reader wants to know. */
export interface PlanDocument {
  readonly laywrightPlan: 1;
  readonly project: string;
  readonly seed: number;
  readonly currency: string;
  /** Amounts in the currency; null where a price is missing. */
  readonly toPay: number | null;
  readonly clothPerBag: number | null;
  readonly costPerBag: number | null;
  readonly pricePerBag: number | null;
  readonly markup: number | null;
  readonly margin: number | null;
  /** Digits of the currency's smallest coin, and every line of the costs in such coins. */
  readonly minorDigits: number;
  readonly costs: CostSheet;
  readonly materials: readonly PricedPlan[];
  /** What was written beside the file, and the SHA-256 of its bytes in hex. */
  readonly files?: readonly { readonly name: string; readonly sha256: string }[] | undefined;
}

/** One material's lay, what is left over, and what is bought for it. */
export interface PricedPlan extends MaterialPlan {
  readonly offcuts: readonly StockOffcuts[];
  readonly purchase: Purchase;
  readonly cost: number | null;
}

/** One material's lay. Lengths in mm; utilisation and gap are shares. */
export interface MaterialPlan {
  readonly materialId: string;
  readonly name: string;
  readonly lengthUsed: number;
  /** Area of the pieces over the area of the cloth used. */
  readonly utilisation: number;
  /** Proven shortest length of the open roll, or null without one. */
  readonly bound: number | null;
  /** (length − bound) / bound of the open roll. */
  readonly gap: number | null;
  readonly cut: PlanCut;
  readonly cuttingGap: number;
  readonly edgeMargin: number;
  readonly evaluations: number;
  readonly stock: readonly StockData[];
  readonly pieces: readonly PieceData[];
  readonly placed: readonly PlacedData[];
  readonly unplaced: readonly UnplacedData[];
  readonly pinned: readonly StockPlacement[];
  /** Where several layers are cut at once; copies of pieces are then those laid on top. */
  readonly spread?: LaySpread | undefined;
  /** Where pieces are held to the cloth's pattern: the pattern, and the phases that are fixed. */
  readonly pattern?: LayPattern | undefined;
  readonly phases?: Readonly<Record<string, LayPhase>> | undefined;
  /** All pieces lie the same way, whichever; and the band of the cloth that each bag's parts keep to. */
  readonly sameWay?: true | undefined;
  readonly shade?: LayShade | undefined;
}

/** A stock, its size, and what was used of it. */
export interface StockData {
  readonly id: string;
  readonly kind: Stock["kind"];
  readonly width: number;
  readonly length: number | null;
  readonly outline: OutlineData | null;
  readonly flaws: readonly OutlineData[];
  /** Where a line of the pattern lies, along and across, where something is matched on it. */
  readonly firstLine?: readonly [number, number] | undefined;
  readonly lengthUsed: number;
  readonly utilisation: number;
  readonly bound: number | null;
}

/** A kind of piece in its own frame. */
export interface PieceData {
  readonly id: string;
  readonly count: number;
  readonly outline: OutlineData;
  readonly turns: LayPiece["orientations"];
  readonly freeTurn: boolean;
  /** What one copy gives, where several layers are cut at once. */
  readonly gives?: LayerYield | undefined;
  /** Degrees by which it may lie off its turns. */
  readonly tiltDeg?: number | undefined;
  /** What of the cloth's pattern it is held to. */
  readonly match?: LayMatch | undefined;
}

/** A copy where it lies. */
export interface PlacedData extends StockPlacement {
  readonly outline: OutlineData;
}

/** Copies left out. */
export interface UnplacedData {
  readonly pieceId: string;
  readonly count: number;
  readonly reason: UnplacedReason;
  readonly help: LeftOut | null;
  readonly outline: OutlineData;
}

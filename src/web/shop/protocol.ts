import type { Drawing } from "../../core/drawing/list/drawing.ts";
import type { LengthStep } from "../../core/job/shopping/bagSteps.ts";
import type { OwnedPiece } from "../../core/job/shopping/fromPiece.ts";
import type { ShopCell } from "../../core/job/shopping/shopCell.ts";
import type { RowFigures } from "../../core/job/shopping/shopRow.ts";
import type { ShopWish } from "../../core/job/shopping/shopTable.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import type { ChosenStock } from "../state/layBoard.ts";

/** What a shop worker is asked, once: a table or a part of it, how cloth and money grow with the bags, what a piece makes, or which stocks to cut into. */
export type ShopAsk = { readonly project: Project; readonly wish: ShopWish; readonly language: Language } & (
  | { readonly kind: "table" }
  | { readonly kind: "growth"; readonly cell: ShopCell; readonly most: number }
  | { readonly kind: "piece"; readonly piece: OwnedPiece }
  | { readonly kind: "choice" }
);

/** How many come out of a piece, and its plan to look at. */
export interface MadeShown {
  readonly count: number;
  readonly drawing: Drawing | null;
}

/** What a piece makes: bags alone; each strap alone, and besides the bags. */
export interface PieceShown {
  readonly bags: MadeShown;
  readonly straps: readonly { readonly strapId: string; readonly alone: MadeShown; readonly besides: MadeShown }[];
}

/** A row of the page's table: the figures of a checked plan, or why there is none. */
export type ShopLine = RowFigures | { readonly kind: "barred"; readonly cell: ShopCell; readonly why: string };

/** The curve's steps, and the bags that cost no cloth. */
export interface Growth {
  readonly steps: readonly LengthStep[];
  readonly free: readonly number[];
}

/** What comes back: lines as they are found, a curve, why it cannot be cut, the end. */
export type ShopTold =
  | { readonly kind: "line"; readonly line: ShopLine }
  | { readonly kind: "growth"; readonly growth: Growth }
  | { readonly kind: "piece"; readonly made: PieceShown }
  | { readonly kind: "choice"; readonly choice: ChosenStock }
  | { readonly kind: "barred"; readonly why: string }
  | { readonly kind: "end" };

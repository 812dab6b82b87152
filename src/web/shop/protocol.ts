import type { LengthStep } from "../../core/job/shopping/bagSteps.ts";
import type { ShopCell } from "../../core/job/shopping/shopCell.ts";
import type { RowFigures } from "../../core/job/shopping/shopRow.ts";
import type { ShopWish } from "../../core/job/shopping/shopTable.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";

/** What a shop worker is asked, once: a table or a part of it, or how cloth and money grow with the bags. */
export type ShopAsk = { readonly project: Project; readonly wish: ShopWish; readonly language: Language } & (
  | { readonly kind: "table" }
  | { readonly kind: "growth"; readonly cell: ShopCell; readonly most: number }
);

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
  | { readonly kind: "barred"; readonly why: string }
  | { readonly kind: "end" };

import type { PatternRole, UnderstoodPattern } from "../../core/patterns/patternOutline.ts";
import type { PatternPanel } from "../../core/patterns/patternPanels.ts";
import type { Mend } from "../../core/patterns/understandPattern.ts";
import type { ImageOptions } from "../../reading/image/readImage.ts";
import type { SheetsByHand } from "../../reading/pdf/sheetsByHand.ts";

/** How sheets of a PDF lie, or what gives a photograph its scale, where the maker says so. */
export interface PatternLie {
  readonly sheets?: SheetsByHand | undefined;
  readonly image?: ImageOptions | undefined;
}

/** How the maker wants a file understood. */
export interface PatternWish {
  readonly lie: PatternLie;
  readonly mend: readonly Mend[];
  /** What one step of the file is; empty for what the file says. */
  readonly unit: string;
  /** What outlines are for, by their names, where she says so. */
  readonly roles: Readonly<Record<string, PatternRole>>;
  /** The same by a point of the line, mm, while names change: joined lines are counted anew. */
  readonly rolesAt: readonly RoleAt[];
}

/** What the line through a point is for. */
export interface RoleAt {
  readonly x: number;
  readonly y: number;
  readonly role: PatternRole;
}

/** What the page asks its reading worker: one file. */
export interface PatternAsk {
  readonly bytes: Uint8Array;
  readonly wish: PatternWish;
}

/** A file that was read, and the panels that come of it. */
export interface ReadPattern {
  readonly pattern: UnderstoodPattern;
  readonly panels: readonly PatternPanel[];
}

/** What the worker sends back. Libraries in it may send words of their own, which have no `laywrightRead`. */
export type PatternReply =
  | { readonly laywrightRead: true; readonly read: ReadPattern }
  | { readonly laywrightRead: false; readonly reason: string };

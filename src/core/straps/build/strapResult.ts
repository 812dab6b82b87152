import type { Caution } from "../../materials/caution.ts";
import type { CutPiece } from "../../materials/cutPiece.ts";
import type { InchStep } from "../../materials/material.ts";
import type { Phrase, StrapWarning } from "../../words/phrase.ts";
import type { ConsumableCode, LengthItemCode, NeedlePlace } from "../../words/strapWords.ts";
import type { StitchRow } from "../constructions/construction.ts";
import type { SolvedSection } from "../section/foldSection.ts";
import type { ProfileSpan } from "../section/thicknessProfile.ts";
import type { WrappedSection } from "../section/wrappedSection.ts";
import type { ConstructionId, HardwareNeeded, NeedleChoice, StrapWish } from "../wish/strapWish.ts";

/** The cross-section: a stack of folded layers, or a strip round a cord. */
export type StrapSection = SolvedSection | WrappedSection;

/** One thing that adds to the length. mm. */
export interface LengthItem {
  readonly code: LengthItemCode;
  readonly mm: number;
}

/** How long the strip is cut, and why. */
export interface StrapLengths {
  /** End to end as finished, mm; both parts together where there are two. */
  readonly finished: number;
  /** Of the one strip, or of the long part, mm. */
  readonly cut: number;
  /** Cut length of the short part of a two-part strap, else null. */
  readonly shortPart: number | null;
  /** Sums to `cut`. */
  readonly items: readonly LengthItem[];
  /** Longest and shortest as worn when the strap is adjustable, mm. */
  readonly longest: number | null;
  readonly shortest: number | null;
}

/** Bought by the metre or spool. `mm` is the length to have ready, waste included. */
export interface Consumable {
  readonly kind: "tape" | "topstitch-thread" | "construction-thread" | "edge-paint" | "cord" | "webbing";
  readonly code: ConsumableCode;
  readonly mm: number;
}

/** Thickness at one place and what it means for the machine. */
export interface NeedleCheck {
  readonly where: NeedlePlace;
  readonly thickness: number;
  readonly layers: number;
}

/** Another construction that would pass the limits, and what it takes. */
export interface Alternative {
  readonly construction: ConstructionId;
  readonly cutWidth: number;
  readonly layers: number;
  readonly thickness: number;
  /** Roll length that `count` straps need when cut along the roll side by side, mm; null when no width is known. */
  readonly rollLength: number | null;
}

/** A strap as pictures take it: `inches` is null where lengths are wanted in mm alone. */
export type DrawnStrap = Omit<StrapResult, "inches"> & { readonly inches: InchStep | null };

/** A strap worked out from its wish. Lengths in mm. */
export interface StrapResult {
  readonly wish: StrapWish;
  /** Divisions of an inch rule that mean something on its outer material. */
  readonly inches: InchStep;
  readonly pieces: readonly CutPiece[];
  readonly nominalWidth: number;
  readonly cutWidth: number;
  readonly finishedWidth: number;
  /** Layers of cloth where the strap is flat, cores not counted. */
  readonly layers: number;
  /** Where the strap is flat, cores counted. */
  readonly thickness: number;
  /** From the strip's lower edge. */
  readonly foldLines: readonly number[];
  /** How far raw edges are held back: from the centre crease (fourfold), the opposite fold (in three), else from where they would meet. */
  readonly setback: number;
  readonly section: StrapSection;
  /** Seams and topstitching along the strap. */
  readonly rows: readonly StitchRow[];
  readonly lengths: StrapLengths;
  /** Roll length that all these straps take when cut side by side, mm; null when no width of cloth is known. */
  readonly rollLength: number | null;
  /** Layers and thickness across the strap; null for a corded handle. */
  readonly across: readonly ProfileSpan[] | null;
  /** Layers and thickness along the finished strap, doubled at folded ends. */
  readonly along: readonly ProfileSpan[];
  readonly needle: readonly NeedleCheck[];
  readonly consumables: readonly Consumable[];
  readonly hardware: readonly HardwareNeeded[];
  /** Needle and thread that her machine sews the outer material with; null where she does not say. */
  readonly sewnWith: NeedleChoice | null;
  readonly alternatives: readonly Alternative[];
  readonly warnings: readonly StrapWarning[];
  readonly steps: readonly Phrase[];
  readonly cautions: readonly Caution[];
}

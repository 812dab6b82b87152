import type { CupboardPiece } from "../../core/cupboard/cupboard.ts";
import type { Drawing } from "../../core/drawing/list/drawing.ts";
import type { Page } from "../../core/drawing/list/page.ts";
import type { RulerCard } from "../../core/drawing/sheets/rulerPages.ts";
import type { LaidCloth } from "../../core/job/laidCloth.ts";
import type { RulerJob } from "../../core/job/rulerJob.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import type { Paper } from "../../core/project/papers.ts";
import type { Project } from "../../core/project/project.ts";
import type { StrapResult } from "../../core/straps/build/strapResult.ts";
import type { Language } from "../../core/units/language.ts";
import type { CutSheet } from "../../export/cutsheet/cutSheet.ts";
import type { Telling } from "../../export/cutsheet/shelfLabels.ts";
import type { ShoppingSheet } from "../../export/cutsheet/shoppingSheet.ts";
import type { OutputId } from "../../export/outputs.ts";
import type { PdfFile } from "../../export/pdf/pagesPdf.ts";
import type { PlanFile } from "../../export/planFile.ts";

/** How many sheets a paper takes. */
export interface PaperCount {
  readonly paper: string;
  readonly sheets: number;
}

/** The pages of one stock as they would be printed. */
export interface PaperStack {
  readonly stockId: string;
  /** Page map first, then the sheets in order. */
  readonly pages: readonly Page[];
  readonly sheets: number;
}

/** A mat of a cutting machine with what is cut on it. */
export interface MatPage {
  readonly page: Page;
  readonly files: readonly PlanFile[];
}

/** All mats of one material. */
export interface MatStack {
  readonly mats: readonly MatPage[];
  /** Names of pieces that no mat takes. */
  readonly tooLarge: readonly string[];
  /** Why there is no mat, in a sentence; null when there is no reason. */
  readonly refusal: string | null;
}

/** One stock's drawing as it is sent to a machine without a mat. */
export interface StockPicture {
  readonly stockId: string;
  /** What its sheets are headed with. */
  readonly name: string;
  readonly drawing: Drawing;
}

/** The plan for the ruler beside the plan on the table, and its cuts to look at. */
export interface RulerAnswer extends RulerJob {
  readonly stacks: readonly RulerStack[];
}

/** One stock cut by ruler. `cards` is null when its plan cannot be cut edge to edge. */
export interface RulerStack extends StockPicture {
  readonly cuts: number;
  readonly settings: number;
  /** What to know before the first cut, in sentences. */
  readonly notes: readonly string[];
  readonly cards: readonly RulerCard[] | null;
}

/** The plans of all materials together. */
interface WholePlan {
  readonly project: Project;
  readonly pieces: readonly CutPiece[];
  /** For what the cut sheet says of their making. */
  readonly straps: readonly StrapResult[];
  readonly language: Language;
  readonly lays: readonly LaidCloth[];
}

/** What the page asks of the export worker. */
export type Ask =
  | {
      readonly kind: "paper";
      readonly language: Language;
      readonly project: Project;
      readonly pieces: readonly CutPiece[];
      readonly lay: LaidCloth;
    }
  | {
      readonly kind: "ruler";
      readonly language: Language;
      readonly project: Project;
      readonly pieces: readonly CutPiece[];
      readonly lay: LaidCloth;
    }
  | {
      readonly kind: "papers";
      readonly language: Language;
      readonly project: Project;
      readonly pieces: readonly CutPiece[];
      readonly lay: LaidCloth;
    }
  | {
      readonly kind: "drawings";
      readonly language: Language;
      readonly project: Project;
      readonly pieces: readonly CutPiece[];
      readonly lay: LaidCloth;
    }
  | ({ readonly kind: "files"; readonly outputs: readonly OutputId[] } & WholePlan)
  | ({ readonly kind: "sheet" } & WholePlan)
  | { readonly kind: "shopping"; readonly list: ShoppingSheet; readonly paper: Paper }
  | {
      readonly kind: "shelf-labels";
      readonly pieces: readonly CupboardPiece[];
      readonly telling: Telling;
      readonly paper: Paper;
      readonly title: string;
    }
  | {
      readonly kind: "mats";
      readonly language: Language;
      readonly project: Project;
      readonly pieces: readonly CutPiece[];
      readonly lay: LaidCloth;
    };

/** Files, and characters that no font had. */
export interface MadeFiles {
  readonly files: readonly PlanFile[];
  readonly missingGlyphs: readonly string[];
}

/** What comes back, by what was asked. */
export interface Answers {
  readonly paper: readonly PaperStack[];
  readonly ruler: RulerAnswer;
  /** Sheets of all stocks together on each common paper. */
  readonly papers: readonly PaperCount[];
  readonly drawings: readonly StockPicture[];
  readonly files: MadeFiles;
  readonly shopping: PdfFile;
  readonly "shelf-labels": PdfFile;
  readonly mats: MatStack;
  readonly sheet: CutSheet;
}

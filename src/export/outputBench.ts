import type { LaySheet, PieceArt } from "../core/drawing/lay/layDrawing.ts";
import type { Drawing } from "../core/drawing/list/drawing.ts";
import type { Page } from "../core/drawing/list/page.ts";
import type { SheetTitle } from "../core/drawing/sheets/tilePages.ts";
import type { LaidCloth } from "../core/job/laidCloth.ts";
import type { Language } from "../core/units/language.ts";
import type { CutSheet } from "./cutsheet/cutSheet.ts";
import type { Faces } from "./fonts/faces.ts";
import type { PdfOptions } from "./pdf/pagesPdf.ts";
import type { PlanFilesInput } from "./planFile.ts";
import type { ClothOnStock } from "./tiledPages.ts";

/** Makes a PDF with the input's fonts and notes which characters they lack. */
export type PdfMaker = (title: string, pages: readonly Page[], more?: Partial<PdfOptions>) => Promise<Uint8Array>;

/** What all outputs of a plan are made from, worked out once. */
export interface OutputBench {
  readonly input: PlanFilesInput;
  readonly language: Language;
  readonly sheet: CutSheet;
  readonly art: ReadonlyMap<string, PieceArt>;
  readonly faces: Faces;
  readonly pdf: PdfMaker;
}

/** One stock drawn, and what its files are called. */
export interface DrawnStock {
  readonly laid: ClothOnStock;
  readonly sheet: LaySheet;
  readonly title: SheetTitle;
  readonly stem: string;
}

/** One mat drawn, and what its files are called. */
export interface DrawnMat {
  readonly drawing: Drawing;
  readonly title: string;
  readonly stem: string;
  readonly about: string;
}

/** A material's lay and what its files are called. */
export interface NamedCloth {
  readonly cloth: LaidCloth;
  readonly stem: string;
}

/** What outputs are made of, one file or none for each: the whole project, a stock, a mat or a material. */
export interface OutputItems {
  readonly project: null;
  readonly stock: DrawnStock;
  readonly mat: DrawnMat;
  readonly cloth: NamedCloth;
}

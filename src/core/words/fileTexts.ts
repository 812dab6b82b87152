import type { LaserRisk } from "../materials/laser.ts";

/** What is said of the files for the cutting table in one language; a language that lacks a word does not compile. */
export interface FileTexts {
  /** Titles of documents, after the project's name. */
  readonly titles: { readonly cutSheet: string; readonly patterns: string };
  /** What each kind of file is called where several are one kind. */
  readonly kinds: {
    readonly sheets: string;
    readonly longSheet: string;
    readonly patterns: string;
    readonly mats: string;
  };
  /** What each file is for. */
  readonly about: {
    readonly cutSheetToPrint: string;
    readonly cutSheetAsText: string;
    readonly cutList: string;
    readonly labels: string;
    readonly layPlan: string;
    readonly forDrawing: (about: string) => string;
    readonly tiles: (sheets: number, paper: string) => string;
    readonly longSheets: (sheets: number, rollWidth: string) => string;
    readonly projector: string;
    readonly patterns: (sheets: number, paper: string) => string;
    readonly rulerCuts: (cuts: number) => string;
    readonly rulerList: string;
    readonly mat: (number: number, of: number) => string;
  };
  /** The sheet that lies in photographs of patterns; in letters of Latin-1 alone. */
  readonly photoSheet: { readonly title: string; readonly measure: string; readonly use: readonly string[] };
  /** Pieces that no mat takes. */
  readonly tooLarge: (names: string, material: string) => string;
  /** A lay that would be too many sheets to tape together. */
  readonly tooManySheets: (what: string, sheets: number, paper: string, most: number) => string;
  /** A plan laid freely of which a ruler would take off strips narrower than wished. */
  readonly tooNarrow: (file: string, strips: number, least: string) => string;
  /** A drawing of so many names that their letters would fill the file. */
  readonly tooManyLetters: (file: string, names: number, most: number) => string;
  /** Why a laser gets no file of a material. */
  readonly laserRefusal: (material: string, risk: LaserRisk) => string;
}

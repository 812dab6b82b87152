import { type LaySheet, layDrawing, type PieceArt } from "../core/drawing/lay/layDrawing.ts";
import { grainArrow } from "../core/drawing/lay/pieceArt.ts";
import { stockName } from "../core/drawing/lay/stockName.ts";
import type { Page } from "../core/drawing/list/page.ts";
import { type CurvedSheet, curvedSheet } from "../core/drawing/sheets/curvedSheet.ts";
import { mapPages } from "../core/drawing/sheets/mapPage.ts";
import { patternSheet } from "../core/drawing/sheets/patternSheet.ts";
import { diagnosePrinter, type PrinterFinding } from "../core/drawing/sheets/printer.ts";
import { type SheetTitle, tilePages } from "../core/drawing/sheets/tilePages.ts";
import { MOST_SHEETS, seamsOf, type TilingOptions, tilePieces } from "../core/drawing/sheets/tiling.ts";
import type { Box } from "../core/geometry/box.ts";
import type { LaidCloth } from "../core/job/laidCloth.ts";
import type { Stock } from "../core/lay/problem/layProblem.ts";
import type { CutPiece } from "../core/materials/cutPiece.ts";
import type { Material } from "../core/materials/material.ts";
import type { OutputSettings } from "../core/project/outputSettings.ts";
import { PAPERS, paperOf } from "../core/project/papers.ts";
import type { Project } from "../core/project/project.ts";
import { cutLength } from "../core/units/cutLength.ts";
import { formatLength } from "../core/units/formatLength.ts";
import type { Language } from "../core/units/language.ts";
import { PAPER_TEXTS } from "../core/words/words.ts";
import { patternsOf } from "./patterns.ts";

/** A material's lay on one of its stocks. */
export type ClothOnStock = LaidCloth & { readonly stock: Stock };

/** The stocks of a material that something lies on. */
export function stocksInUse(cloth: LaidCloth): ClothOnStock[] {
  return cloth.problem.stocks
    .filter((stock) => cloth.plan.placements.some(({ stockId }) => stockId === stock.id))
    .map((stock) => ({ ...cloth, stock }));
}

/** The pages of a tiling and how many of them are sheets of the lay; null when there is nothing to tape together. */
export interface TiledPages {
  /** Empty when there are more than `MOST_SHEETS`. */
  readonly pages: readonly Page[];
  readonly sheets: number;
}

/** The sheets of one stock to tape together: the whole lay, or its curved pieces with a list of the rectangles. */
export function tiledPages(
  project: Project,
  { material, problem, plan, stock }: ClothOnStock,
  art: ReadonlyMap<string, PieceArt>,
  language: Language = "en",
): TiledPages | null {
  const grain = grainArrow(material);
  const drawn = (seams: readonly Box[]): CurvedSheet => {
    const whole = layDrawing(stock, plan, art, grain, language, seams, problem.pattern);
    return project.output.sheets === "curved" ? curvedSheet(whole, art) : { sheet: whole, bySize: [] };
  };
  const { copies } = drawn([]).sheet;
  if (copies.length === 0) return null;
  const tiling = tilePieces(copies, tilingOptions(project.output));
  const sheets = tiling.tiles.length;
  if (sheets > MOST_SHEETS) return { pages: [], sheets };
  const { sheet, bySize } = drawn(seamsOf(tiling));
  const title = titleOf(project, material, stock, sheet, language);
  return {
    pages: [...mapPages(sheet, tiling, title, bySize), ...tilePages(sheet, tiling, title, grain)],
    sheets,
  };
}

/** One of each curved piece of the whole project, to tape together; null when no piece is curved. */
export function patternPages(
  project: Project,
  lays: readonly LaidCloth[],
  pieces: readonly CutPiece[],
  language: Language,
): TiledPages | null {
  const { output } = project;
  const { patterns, oneOfEach } = PAPER_TEXTS[language].sheets;
  const options = tilingOptions(output);
  const sheet = patternSheet(patternsOf(lays, pieces, output.lengths, language), options);
  if (!sheet) return null;
  const tiling = tilePieces(sheet.copies, options);
  const sheets = tiling.tiles.length;
  if (sheets > MOST_SHEETS) return { pages: [], sheets };
  const title = { project: project.name, material: patterns, stock: oneOfEach, language };
  return { pages: [...mapPages(sheet, tiling, title), ...tilePages(sheet, tiling, title, "both")], sheets };
}

/** What the measured test square says about the printer. */
export function printerFinding({ testSquare }: OutputSettings): PrinterFinding {
  return diagnosePrinter(100, testSquare.x, testSquare.y, PAPERS);
}

/** How the project's settings cut a drawing into sheets. */
export function tilingOptions(output: OutputSettings): TilingOptions {
  return {
    paper: paperOf(output.paper),
    margin: output.pageMargin,
    overlap: output.overlap,
    orientation: output.orientation,
    correction: printerFinding(output).correction,
  };
}

/** The words on every sheet of a stock. */
export function titleOf(
  project: Project,
  material: Material,
  stock: Stock,
  sheet: LaySheet,
  language: Language,
): SheetTitle {
  const { lengths } = project.output;
  const texts = PAPER_TEXTS[language].sheets;
  const words =
    stock.kind === "roll"
      ? texts.roll(formatLength(stock.width, lengths, language), formatLength(sheet.usedLength, lengths, language))
      : stockName(material.stock, stock.id, (mm) => cutLength(mm, lengths, language), language);
  return { project: project.name, material: material.name, stock: words, language };
}

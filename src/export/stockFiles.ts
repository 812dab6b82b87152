import type { LaySheet, PieceArt } from "../core/drawing/lay/layDrawing.ts";
import { layDrawing } from "../core/drawing/lay/layDrawing.ts";
import { stockName } from "../core/drawing/lay/stockName.ts";
import type { Drawing } from "../core/drawing/list/drawing.ts";
import type { Page } from "../core/drawing/list/page.ts";
import { drawnRoles, ROLE_STYLES, styledAs } from "../core/drawing/list/roleStyles.ts";
import { singleCuts } from "../core/drawing/machine/singleCuts.ts";
import { type CurvedSheet, curvedSheet } from "../core/drawing/sheets/curvedSheet.ts";
import { mapPages } from "../core/drawing/sheets/mapPage.ts";
import { patternSheet } from "../core/drawing/sheets/patternSheet.ts";
import { diagnosePrinter, type PrinterFinding } from "../core/drawing/sheets/printer.ts";
import { rulerPages, rulerPlan } from "../core/drawing/sheets/rulerPages.ts";
import { barePage, projectionStyles, rollPages } from "../core/drawing/sheets/sheetPage.ts";
import { type SheetTitle, tilePages } from "../core/drawing/sheets/tilePages.ts";
import { MOST_SHEETS, seamsOf, type TilingOptions, tilePieces } from "../core/drawing/sheets/tiling.ts";
import type { Box } from "../core/geometry/ring.ts";
import type { LaidCloth } from "../core/job/laidCloth.ts";
import { rulerCuts } from "../core/lay/alternatives/layFigures.ts";
import type { Stock } from "../core/lay/problem/layProblem.ts";
import type { Material } from "../core/materials/material.ts";
import type { OutputSettings } from "../core/project/outputSettings.ts";
import { PAPERS, paperOf } from "../core/project/papers.ts";
import type { Project } from "../core/project/project.ts";
import { cutLength } from "../core/units/cutLength.ts";
import { formatLength } from "../core/units/formatLength.ts";
import type { Language } from "../core/units/language.ts";
import { FILE_TEXTS, PAPER_TEXTS, RULER_TEXTS } from "../core/words/words.ts";
import { dxfText } from "./dxf/dxfText.ts";
import { paperStem } from "./fileStem.ts";
import type { Faces } from "./fonts/faces.ts";
import { letterRings, textOutlines } from "./fonts/textOutlines.ts";
import { grainArrow } from "./grainArrow.ts";
import { laserRefusal } from "./laserRefusal.ts";
import { patternsOf } from "./patterns.ts";
import type { PdfOptions } from "./pdf/pagesPdf.ts";
import type { PlanFile, PlanFilesInput } from "./planFile.ts";
import { svgText } from "./svg/svgText.ts";

/** Makes a PDF with the input's fonts and notes which characters they lack. */
export type PdfMaker = (title: string, pages: readonly Page[], more?: Partial<PdfOptions>) => Promise<Uint8Array>;

/** A material's lay on one of its stocks. */
export type LaidStock = LaidCloth & { readonly stock: Stock };

/** The pages of a tiling and how many of them are sheets of the lay; null when there is nothing to tape together. */
export interface TiledPages {
  /** Empty when there are more than `MOST_SHEETS`. */
  readonly pages: readonly Page[];
  readonly sheets: number;
}

/** Files, and in sentences what was not written and why. */
export interface WrittenFiles {
  readonly files: readonly PlanFile[];
  readonly notes: readonly string[];
}

/**
 * Every file of one stock: the drawing (none of what a laser must not touch, when there is a laser), the sheets to tape
 * together, the long sheet, the projector's, ruler cuts.
 */
export async function stockFiles(
  { project, language = "en", faces }: Pick<PlanFilesInput, "project" | "language"> & { readonly faces: Faces },
  laid: LaidStock,
  art: ReadonlyMap<string, PieceArt>,
  stem: string,
  pdf: PdfMaker,
): Promise<WrittenFiles> {
  const { output } = project;
  const { about } = FILE_TEXTS[language];
  const grain = grainArrow(laid.material);
  const sheet = layDrawing(laid.stock, laid.plan, art, grain, language);
  const title = titleOf(project, laid.material, laid.stock, sheet, language);
  const name = `${title.project}: ${title.material}`;
  const paper = paperOf(output.paper);
  const tiled = tiledPages(project, laid, art, language);
  const roll = rollPages(sheet, title, grain, {
    rollWidth: output.rollWidth,
    correction: printerFinding(output).correction,
  });
  const rollWords = formatLength(output.rollWidth, output.lengths, language);
  const taped =
    tiled === null || tiled.pages.length === 0
      ? []
      : [
          {
            name: `${stem}-${paperStem(output)}.pdf`,
            data: await pdf(name, tiled.pages),
            about: about.tiles(tiled.sheets, paper.id),
          },
        ];
  const files = [
    ...(laserRefusal(laid.material, output) === null
      ? drawingFiles(sheet.drawing, name, stem, about.layPlan, output, faces, language)
      : []),
    ...taped,
    {
      name: `${stem}-one-sheet.pdf`,
      data: await pdf(name, roll),
      about: about.longSheets(roll.length, rollWords),
    },
    {
      name: `${stem}-projector.pdf`,
      data: await pdf(name, [barePage(sheet)], { styles: projectionStyles(ROLE_STYLES), background: "#000000" }),
      about: about.projector,
    },
    ...(await rulerFiles(project, laid, sheet, title, stem, pdf)),
  ];
  return { files, notes: tooManyNotes(tiled?.sheets ?? 0, laid.material.name, paper.id, language) };
}

function tooManyNotes(sheets: number, what: string, paper: string, language: Language): readonly string[] {
  return sheets > MOST_SHEETS ? [FILE_TEXTS[language].tooManySheets(what, sheets, paper, MOST_SHEETS)] : [];
}

/** A drawing as SVG and DXF, layers, lines, letters and shared edges as the settings have them. */
function drawingFiles(
  drawing: Drawing,
  title: string,
  stem: string,
  about: string,
  output: OutputSettings,
  faces: Faces,
  language: Language,
): PlanFile[] {
  return linesFiles(sentDrawing(drawing, output), title, stem, about, output, faces, true, language);
}

/** A drawing as a machine gets it: cut lines that neighbours share would be cut twice. */
function sentDrawing(drawing: Drawing, output: OutputSettings): Drawing {
  return output.sharedEdges === "once" ? singleCuts(drawing) : drawing;
}

/** What the drawing files of a stock hold, for a screen: shared edges and left-out lines as the settings have them. */
export function sentPicture(drawing: Drawing, output: OutputSettings): Drawing {
  const { box, items } = sentDrawing(drawing, output);
  const drawn = new Set(drawnRoles(output.lines));
  return { box, items: items.filter((item) => item.kind === "area" || drawn.has(item.role)) };
}

/** A drawing as it is, as SVG and DXF. */
export function linesFiles(
  drawing: Drawing,
  title: string,
  stem: string,
  about: string,
  { lines, letters }: OutputSettings,
  faces: Faces,
  areas: boolean,
  language: Language,
): PlanFile[] {
  const roles = drawnRoles(lines);
  const outlines = letters === "outlines";
  const layers = Object.fromEntries(
    Object.entries(lines).flatMap(([role, line]) => (line?.layer === undefined ? [] : [[role, line.layer]])),
  );
  const svg = svgText(drawing, {
    title,
    styles: styledAs(lines),
    roles,
    layers,
    areas,
    // No transform may stand in the file, so turned text is never text.
    outlineText: (text) => (outlines || text.turnDeg !== 0 ? textOutlines(text, faces) : null),
  });
  const dxf = dxfText(drawing, {
    lines,
    roles,
    outlineText: (text) => (outlines ? letterRings(textOutlines(text, faces)) : null),
  });
  return [
    { name: `${stem}.svg`, data: svg, about },
    { name: `${stem}.dxf`, data: dxf, about: FILE_TEXTS[language].about.forDrawing(about) },
  ];
}

/** The sheets of one stock to tape together: the whole lay, or its curved pieces with a list of the rectangles. */
export function tiledPages(
  project: Project,
  { material, plan, stock }: LaidStock,
  art: ReadonlyMap<string, PieceArt>,
  language: Language = "en",
): TiledPages | null {
  const grain = grainArrow(material);
  const drawn = (seams: readonly Box[]): CurvedSheet => {
    const whole = layDrawing(stock, plan, art, grain, language, seams);
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

/** One of each curved piece of the whole project, to tape together. */
export async function patternFiles(
  { project, pieces, lays, language = "en" }: PlanFilesInput,
  pdf: PdfMaker,
): Promise<WrittenFiles> {
  const { output } = project;
  const { patterns, oneOfEach } = PAPER_TEXTS[language].sheets;
  const { titles, about } = FILE_TEXTS[language];
  const options = tilingOptions(output);
  const paper = paperOf(output.paper);
  const sheet = patternSheet(patternsOf(lays, pieces, output.lengths, language), options);
  if (!sheet) return { files: [], notes: [] };
  const title = { project: project.name, material: patterns, stock: oneOfEach, language };
  const tiling = tilePieces(sheet.copies, options);
  const sheets = tiling.tiles.length;
  const notes = tooManyNotes(sheets, patterns, paper.id, language);
  if (notes.length > 0) return { files: [], notes };
  const pages = [...mapPages(sheet, tiling, title), ...tilePages(sheet, tiling, title, "both")];
  const file = {
    name: `patterns-${paperStem(output)}.pdf`,
    data: await pdf(`${project.name}: ${titles.patterns}`, pages),
    about: about.patterns(sheets, paper.id),
  };
  return { files: [file], notes };
}

/** Longest sequence of cuts worth printing. */
const MOST_CUTS = 400;

/** The cuts in order, where the lay can be parted from edge to edge. */
async function rulerFiles(
  project: Project,
  { problem, plan: lay, stock }: LaidStock,
  sheet: LaySheet,
  title: SheetTitle,
  stem: string,
  pdf: PdfMaker,
): Promise<PlanFile[]> {
  // Cloth that no ruler can part does not take the pages from the other cloth.
  const cuts = rulerCuts({ ...problem, stocks: [stock] }, lay)?.[0];
  if (!cuts || cuts.sequence.cuts > MOST_CUTS) return [];
  const plan = rulerPlan(cuts, sheet, RULER_TEXTS[title.language]);
  const write = (mm: number): string => cutLength(mm, project.output.lengths, title.language);
  const pages = rulerPages(plan, paperOf(project.output.paper), title, write);
  const data = await pdf(`${title.project}: ${title.material}`, pages);
  const about = FILE_TEXTS[title.language].about.rulerCuts(plan.sequence.cuts);
  return [{ name: `${stem}-ruler.pdf`, data, about }];
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

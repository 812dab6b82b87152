import type { Drawing } from "../core/drawing/drawing.ts";
import type { LaySheet, PieceArt } from "../core/drawing/layDrawing.ts";
import { layDrawing } from "../core/drawing/layDrawing.ts";
import { mapPages } from "../core/drawing/mapPage.ts";
import type { Page } from "../core/drawing/page.ts";
import { PAPERS, type Paper, paperNamed } from "../core/drawing/papers.ts";
import { patternSheet } from "../core/drawing/patternSheet.ts";
import { pieceArt } from "../core/drawing/pieceArt.ts";
import { diagnosePrinter } from "../core/drawing/printer.ts";
import { ROLE_STYLES } from "../core/drawing/roleStyles.ts";
import { rulerPages, rulerPlan } from "../core/drawing/rulerPages.ts";
import { barePage, projectionStyles, rollPages } from "../core/drawing/sheetPage.ts";
import { singleCuts } from "../core/drawing/singleCuts.ts";
import { type SheetTitle, tilePages } from "../core/drawing/tilePages.ts";
import { tilePieces } from "../core/drawing/tiling.ts";
import { rulerCuts } from "../core/lay/choices/layFigures.ts";
import { RULER_TEXTS } from "../core/lay/ruler/words/rulerTextTables.ts";
import type { Stock } from "../core/lay/types.ts";
import type { Material } from "../core/materials/material.ts";
import type { OutputSettings, Project } from "../core/project/project.ts";
import { formatLength } from "../core/units/formatLength.ts";
import type { Language } from "../core/units/language.ts";
import type { CutSheet } from "./cutsheet/cutSheet.ts";
import { cutSheetCsv } from "./cutsheet/cutSheetCsv.ts";
import { cutSheetPages } from "./cutsheet/cutSheetPages.ts";
import { cutSheetText } from "./cutsheet/cutSheetText.ts";
import { labelPages } from "./cutsheet/labelPages.ts";
import type { LaidCloth } from "./cutsheet/layWords.ts";
import { projectSheet, type SheetInput } from "./cutsheet/projectSheet.ts";
import { dxfText } from "./dxf/dxfText.ts";
import { distinctStems } from "./fileStem.ts";
import type { FontBytes } from "./fonts/fontBytes.ts";
import { turnedText } from "./fonts/turnedText.ts";
import { grainArrow } from "./grainArrow.ts";
import { machineMats } from "./machineMats.ts";
import { patternsOf } from "./patterns.ts";
import { type PdfOptions, pagesPdf } from "./pdf/pagesPdf.ts";
import { svgText } from "./svg/svgText.ts";

/** A file for the cutting table. */
export interface PlanFile {
  /** File name without a folder. */
  readonly name: string;
  readonly data: string | Uint8Array;
  /** What it is for, in a few words. */
  readonly about: string;
}

/** All files, and what could not be written as asked. */
export interface PlanFiles {
  readonly files: readonly PlanFile[];
  /** Characters no font had, as `U+65E5`. */
  readonly missingGlyphs: readonly string[];
  /** What was not written and why, in sentences. */
  readonly notes: readonly string[];
}

/** A material's lay, passed by the checker. */
export type LaidMaterial = LaidCloth;

/** What the files are made from. */
export interface PlanFilesInput extends SheetInput {
  readonly fonts: FontBytes;
}

/** Width of the paper roll that copy shops have most, mm: 36 in (common practice, no source). */
const SHOP_ROLL = 914.4;

/** Every file of a plan: cut sheet, and for each stock that is used the drawing, the tiles and the long sheet. */
export async function planFiles(input: PlanFilesInput): Promise<PlanFiles> {
  const { project, pieces, lays } = input;
  const sheet = projectSheet(input);
  const art = pieceArt(pieces, project.output.lengths);
  const stocks = lays.flatMap((lay) => usedStocks(lay).map((stock) => ({ ...lay, stock })));
  const stems = distinctStems(
    stocks.map(({ material, stock }, i) =>
      stocks.some((other, j) => i !== j && other.material === material)
        ? `${material.name} ${stock.id}`
        : material.name,
    ),
    "cloth",
  );
  const missing = new Set<string>();
  const files = await cutSheetFiles(sheet, input, missing);
  for (const [i, laid] of stocks.entries()) {
    files.push(...(await stockFiles(input, laid, art, stems[i]!, missing)));
  }
  files.push(...(await patternFiles(input, missing)));
  const notes: string[] = [];
  const matStems = distinctStems(
    lays.map(({ material }) => material.name),
    "cloth",
  );
  for (const [i, lay] of lays.entries()) {
    const { mats, tooLarge, refusal } = machineMats(lay.material, lay.problem, pieces, project.output);
    files.push(...matFiles(mats, `${project.name}: ${lay.material.name}`, matStems[i]!, input.fonts));
    if (refusal !== null) notes.push(refusal);
    if (tooLarge.length > 0) {
      notes.push(
        `Too large for the machine's mat, to be cut by hand or joined: ${tooLarge.join(", ")} (${lay.material.name}).`,
      );
    }
  }
  return { files, missingGlyphs: [...missing].sort(), notes };
}

async function cutSheetFiles(sheet: CutSheet, input: PlanFilesInput, missing: Set<string>): Promise<PlanFile[]> {
  const paper = knownPaper(input.project.output);
  const pdf = pdfMaker(input, missing);
  const title = `${input.project.name}: cut sheet`;
  return [
    { name: "cut-sheet.pdf", data: await pdf(title, cutSheetPages(sheet, paper)), about: "cut sheet to print" },
    { name: "cut-sheet.txt", data: cutSheetText(sheet), about: "cut sheet as text" },
    { name: "cut-sheet.csv", data: cutSheetCsv(sheet), about: "cut list for a spreadsheet" },
    { name: "labels.pdf", data: await pdf(title, labelPages(sheet, paper)), about: "a label for every piece" },
  ];
}

/** One of each curved piece of the whole project, to tape together. */
async function patternFiles(input: PlanFilesInput, missing: Set<string>): Promise<PlanFile[]> {
  const { project, pieces, lays } = input;
  const options = tilingOptions(project.output);
  const sheet = patternSheet(patternsOf(lays, pieces, project.output.lengths), options);
  if (!sheet) return [];
  const title = { project: project.name, material: "Patterns", stock: "one of each curved piece" };
  const tiling = tilePieces(sheet.copies, options);
  const pages = [...mapPages(sheet, tiling, title), ...tilePages(sheet, tiling, title, "both")];
  return [
    {
      name: `patterns-${paperStem(project.output)}.pdf`,
      data: await pdfMaker(input, missing)(`${project.name}: patterns`, pages),
      about: `one of each curved piece on ${tiling.tiles.length} sheets of ${project.output.paper}; cut rectangles by size`,
    },
  ];
}

const paperStem = (output: OutputSettings): string => output.paper.toLowerCase().replaceAll(" ", "-");

type PdfMaker = (title: string, pages: readonly Page[], more?: Partial<PdfOptions>) => Promise<Uint8Array>;

/** Makes PDFs with the input's fonts and notes which characters they lack. */
function pdfMaker({ fonts }: PlanFilesInput, missing: Set<string>): PdfMaker {
  return async (title, pages, more = {}) => {
    const made = await pagesPdf(pages, fonts, { title, ...more });
    for (const glyph of made.missingGlyphs) missing.add(glyph);
    return made.bytes;
  };
}

async function stockFiles(
  input: PlanFilesInput,
  laid: LaidMaterial & { readonly stock: Stock },
  art: ReadonlyMap<string, PieceArt>,
  stem: string,
  missing: Set<string>,
): Promise<PlanFile[]> {
  const { project } = input;
  const { material, plan, stock } = laid;
  const grain = grainArrow(material);
  const sheet = layDrawing(stock, plan, art, grain);
  const title = titleOf(project, material, stock, sheet);
  const name = `${title.project}: ${title.material}`;
  const pdf = pdfMaker(input, missing);
  const correction = printerCorrection(project.output);
  const tiling = tilePieces(sheet.copies, tilingOptions(project.output));
  const tiles = [...mapPages(sheet, tiling, title), ...tilePages(sheet, tiling, title, grain)];
  // Cut lines that neighbours share would be cut twice.
  const single = singleCuts(sheet.drawing);
  return [
    {
      name: `${stem}.svg`,
      data: svgText(single, { title: name, outlineText: turnedText(input.fonts) }),
      about: "lay plan at true size",
    },
    { name: `${stem}.dxf`, data: dxfText(single), about: "lay plan at true size for drawing programs" },
    {
      name: `${stem}-${paperStem(project.output)}.pdf`,
      data: await pdf(name, tiles),
      about: `${tiling.tiles.length} sheets of ${project.output.paper} to tape together, and their map`,
    },
    {
      name: `${stem}-one-sheet.pdf`,
      data: await pdf(name, rollPages(sheet, title, grain, { rollWidth: SHOP_ROLL, correction })),
      about: "one long sheet for a copy shop's 36 in roll",
    },
    {
      name: `${stem}-projector.pdf`,
      data: await pdf(name, [barePage(sheet)], { styles: projectionStyles(ROLE_STYLES), background: "#000000" }),
      about: "thick bright lines for a projector",
    },
    ...(await rulerFiles(project, laid, sheet, title, stem, pdf, input.language ?? "en")),
  ];
}

/** Longest sequence of cuts worth printing. */
const MOST_CUTS = 400;

/** The cuts in order, where the lay can be parted from edge to edge. */
async function rulerFiles(
  project: Project,
  { problem, plan: lay, stock }: LaidMaterial & { readonly stock: Stock },
  sheet: LaySheet,
  title: SheetTitle,
  stem: string,
  pdf: PdfMaker,
  language: Language,
): Promise<PlanFile[]> {
  const cuts = rulerCuts(problem, lay)?.find(({ stockId }) => stockId === stock.id);
  if (!cuts || cuts.sequence.cuts > MOST_CUTS) return [];
  const plan = rulerPlan(cuts, sheet, RULER_TEXTS[language]);
  const write = (mm: number): string => formatLength(mm, project.output.lengths);
  const pages = rulerPages(plan, knownPaper(project.output), title, write, language);
  const data = await pdf(`${title.project}: ${title.material}`, pages);
  return [{ name: `${stem}-ruler.pdf`, data, about: `${plan.sequence.cuts} ruler cuts in order, each drawn` }];
}

/** SVG and DXF of every mat. */
export function matFiles(mats: readonly Drawing[], title: string, stem: string, fonts: FontBytes): PlanFile[] {
  const options = { title, areas: false, outlineText: turnedText(fonts) };
  return mats.flatMap((drawing, i) => {
    const about = `mat ${i + 1} of ${mats.length} for the cutting machine`;
    return [
      { name: `${stem}-mat-${i + 1}.svg`, data: svgText(drawing, options), about },
      { name: `${stem}-mat-${i + 1}.dxf`, data: dxfText(drawing), about },
    ];
  });
}

function usedStocks({ problem, plan }: LaidMaterial): Stock[] {
  return problem.stocks.filter((stock) => plan.placements.some((placement) => placement.stockId === stock.id));
}

/** Drawn ÷ measured test square each way. */
function printerCorrection(output: OutputSettings): { readonly x: number; readonly y: number } {
  return diagnosePrinter(100, output.testSquare.x, output.testSquare.y, PAPERS).correction;
}

/** How the project's settings cut a drawing into sheets; the paper must be one we know. */
export function tilingOptions(output: OutputSettings): Parameters<typeof tilePieces>[1] {
  return {
    paper: knownPaper(output),
    margin: output.pageMargin,
    overlap: output.overlap,
    orientation: output.orientation,
    correction: printerCorrection(output),
  };
}

/** The words on every sheet of a stock. */
export function titleOf(project: Project, material: Material, stock: Stock, sheet: LaySheet): SheetTitle {
  const { lengths } = project.output;
  const words =
    stock.kind === "roll"
      ? `${formatLength(stock.width, lengths)} usable width, ${formatLength(sheet.usedLength, lengths)} used`
      : `leftover ${stock.id}`;
  return { project: project.name, material: material.name, stock: words };
}

function knownPaper(output: OutputSettings): Paper {
  const paper = paperNamed(output.paper);
  if (!paper) throw new RangeError(`planFiles: a known paper expected, got ${output.paper}`);
  return paper;
}

import { grainArrow } from "../core/drawing/lay/pieceArt.ts";
import type { Drawing } from "../core/drawing/list/drawing.ts";
import { matWishes, ROLE_STYLES } from "../core/drawing/list/roleStyles.ts";
import { rulerPages, rulerPlan } from "../core/drawing/sheets/rulerPages.ts";
import { barePage, projectionStyles, rollPages } from "../core/drawing/sheets/sheetPage.ts";
import { MOST_SHEETS } from "../core/drawing/sheets/tiling.ts";
import { checkedCuts, needlessStrips } from "../core/job/planCut.ts";
import type { OutputSettings } from "../core/project/outputSettings.ts";
import { paperOf } from "../core/project/papers.ts";
import { cutLength } from "../core/units/cutLength.ts";
import { formatLength } from "../core/units/formatLength.ts";
import type { Language } from "../core/units/language.ts";
import type { FileTexts } from "../core/words/fileTexts.ts";
import { FILE_TEXTS, PAPER_TEXTS, RULER_TEXTS } from "../core/words/words.ts";
import { cutSheetCsv } from "./cutsheet/cutSheetCsv.ts";
import { cutSheetPages } from "./cutsheet/cutSheetPages.ts";
import { cutSheetText } from "./cutsheet/cutSheetText.ts";
import { labelPages } from "./cutsheet/labelPages.ts";
import { drawingDxf, drawingSvg, MOST_DRAWN_TEXTS, sentDrawing, tooManyLetters } from "./drawingFiles.ts";
import { paperStem } from "./fileStem.ts";
import type { Faces } from "./fonts/faces.ts";
import { laserRefusal } from "./laserRefusal.ts";
import type { DrawnMat, DrawnStock, NamedCloth, OutputBench, OutputItems } from "./outputBench.ts";
import type { MadeFile, PlanFile, WrittenFiles } from "./planFile.ts";
import { rulerText } from "./rulerList.ts";
import { patternPages, printerFinding, tiledPages } from "./tiledPages.ts";

/** A kind of file for the cutting table. */
export type Output = {
  [Of in keyof OutputItems]: {
    readonly id: string;
    /** What it is, in a few words; said of each of its files that does not say more. */
    readonly label: (texts: FileTexts) => string;
    readonly of: Of;
    readonly make: (bench: OutputBench, item: OutputItems[Of]) => Made | Promise<Made>;
  };
}[keyof OutputItems];

/** A file; files with what was not written; or nothing to write. */
type Made = MadeFile | WrittenFiles | null;

/**
 * Every kind of file there is, in the order of the list of files. Whoever wants some alone asks for them by id, and
 * nothing else is worked out.
 */
export const OUTPUTS = [
  { id: "cut-sheet", label: ({ about }) => about.cutSheetToPrint, of: "project", make: cutSheetPdf },
  { id: "cut-sheet-text", label: ({ about }) => about.cutSheetAsText, of: "project", make: cutSheetTxt },
  { id: "cut-list", label: ({ about }) => about.cutList, of: "project", make: cutList },
  { id: "labels", label: ({ about }) => about.labels, of: "project", make: labels },
  { id: "svg", label: ({ about }) => about.layPlan, of: "stock", make: stockSvg },
  { id: "dxf", label: ({ about }) => about.forDrawing(about.layPlan), of: "stock", make: stockDxf },
  { id: "sheets", label: ({ kinds }) => kinds.sheets, of: "stock", make: tiledSheets },
  { id: "long-sheet", label: ({ kinds }) => kinds.longSheet, of: "stock", make: longSheet },
  { id: "projector", label: ({ about }) => about.projector, of: "stock", make: projector },
  { id: "ruler-pages", label: ({ about }) => about.rulerList, of: "stock", make: rulerPdf },
  { id: "patterns", label: ({ kinds }) => kinds.patterns, of: "project", make: patterns },
  { id: "mat-svg", label: ({ kinds }) => kinds.mats, of: "mat", make: matSvg },
  { id: "mat-dxf", label: ({ about, kinds }) => about.forDrawing(kinds.mats), of: "mat", make: matDxf },
  { id: "ruler-list", label: ({ about }) => about.rulerList, of: "cloth", make: rulerList },
] as const satisfies readonly Output[];

export type OutputId = (typeof OUTPUTS)[number]["id"];

async function cutSheetPdf(bench: OutputBench): Promise<MadeFile> {
  const pages = cutSheetPages(bench.sheet, paperOf(bench.input.project.output.paper));
  const data = await bench.pdf(cutSheetTitle(bench), pages);
  return { name: "cut-sheet.pdf", data };
}

function cutSheetTxt(bench: OutputBench): MadeFile {
  return { name: "cut-sheet.txt", data: cutSheetText(bench.sheet) };
}

function cutList(bench: OutputBench): MadeFile {
  return { name: "cut-sheet.csv", data: cutSheetCsv(bench.sheet) };
}

async function labels(bench: OutputBench): Promise<MadeFile> {
  const pages = labelPages(bench.sheet, paperOf(bench.input.project.output.paper));
  return { name: "labels.pdf", data: await bench.pdf(cutSheetTitle(bench), pages) };
}

function stockSvg(bench: OutputBench, stock: DrawnStock): Made {
  const { output } = bench.input.project;
  if (laserRefusal(stock.laid.material, output) !== null) return null;
  const sent = sentDrawing(stock.sheet.drawing, output);
  const data = drawingSvg(sent, nameOf(stock), output, bench.faces, true);
  return withLetterNote(bench, sent, { name: `${stock.stem}.svg`, data });
}

function stockDxf(bench: OutputBench, { laid, sheet, stem }: DrawnStock): Made {
  const { output } = bench.input.project;
  if (laserRefusal(laid.material, output) !== null) return null;
  const sent = sentDrawing(sheet.drawing, output);
  const data = drawingDxf(sent, output, bench.faces);
  return withLetterNote(bench, sent, { name: `${stem}.dxf`, data });
}

/** A drawing file, and that its letters are not drawn when there are too many. */
function withLetterNote({ input, language }: OutputBench, drawing: Drawing, file: MadeFile): WrittenFiles {
  const names = tooManyLetters(drawing, input.project.output);
  const notes = names > 0 ? [FILE_TEXTS[language].tooManyLetters(file.name, names, MOST_DRAWN_TEXTS)] : [];
  return { files: [file], notes };
}

async function tiledSheets(bench: OutputBench, stock: DrawnStock): Promise<WrittenFiles> {
  const { project } = bench.input;
  const { output } = project;
  const tiled = tiledPages(project, stock.laid, bench.art, bench.language);
  const paper = paperOf(output.paper).id;
  const files: MadeFile[] = [];
  if (tiled !== null && tiled.pages.length > 0) {
    const data = await bench.pdf(nameOf(stock), tiled.pages);
    const about = aboutOf(bench).tiles(tiled.sheets, paper);
    files.push({ name: `${stock.stem}-${paperStem(output)}.pdf`, data, about });
  }
  return { files, notes: tooManyNotes(tiled?.sheets ?? 0, stock.laid.material.name, paper, bench.language) };
}

async function patterns(bench: OutputBench): Promise<WrittenFiles> {
  const { project, pieces, lays } = bench.input;
  const { output } = project;
  const { language } = bench;
  const found = patternPages(project, lays, pieces, language);
  if (found === null) return { files: [], notes: [] };
  const paper = paperOf(output.paper).id;
  const notes = tooManyNotes(found.sheets, PAPER_TEXTS[language].sheets.patterns, paper, language);
  if (notes.length > 0) return { files: [], notes };
  const file = {
    name: `patterns-${paperStem(output)}.pdf`,
    data: await bench.pdf(`${project.name}: ${FILE_TEXTS[language].titles.patterns}`, found.pages),
    about: aboutOf(bench).patterns(found.sheets, paper),
  };
  return { files: [file], notes };
}

function tooManyNotes(sheets: number, what: string, paper: string, language: Language): readonly string[] {
  return sheets > MOST_SHEETS ? [FILE_TEXTS[language].tooManySheets(what, sheets, paper, MOST_SHEETS)] : [];
}

async function longSheet(bench: OutputBench, stock: DrawnStock): Promise<MadeFile> {
  const { output } = bench.input.project;
  const pages = rollPages(stock.sheet, stock.title, grainArrow(stock.laid.material), {
    rollWidth: output.rollWidth,
    correction: printerFinding(output).correction,
  });
  return {
    name: `${stock.stem}-one-sheet.pdf`,
    data: await bench.pdf(nameOf(stock), pages),
    about: aboutOf(bench).longSheets(pages.length, formatLength(output.rollWidth, output.lengths, bench.language)),
  };
}

async function projector(bench: OutputBench, stock: DrawnStock): Promise<MadeFile> {
  const onBlack = { styles: projectionStyles(ROLE_STYLES), background: "#000000" };
  const data = await bench.pdf(nameOf(stock), [barePage(stock.sheet)], onBlack);
  return { name: `${stock.stem}-projector.pdf`, data };
}

/** Longest sequence of cuts worth printing. */
const MOST_CUTS = 400;

/** The cuts in order, where the lay can be parted from edge to edge. */
async function rulerPdf(bench: OutputBench, stock: DrawnStock): Promise<Made> {
  const { laid, sheet, title, stem } = stock;
  const { output } = bench.input.project;
  // Cloth that no ruler can part does not take the pages from the other cloth.
  const cuts = checkedCuts({ ...laid.problem, stocks: [laid.stock] }, laid.plan)?.[0];
  if (!cuts || cuts.sequence.cuts > MOST_CUTS) return null;
  const write = (mm: number): string => cutLength(mm, output.lengths, bench.language);
  const strips = needlessStrips(laid, cuts);
  const least = write(laid.problem.leastStrip ?? 0);
  if (strips > 0)
    return { files: [], notes: [FILE_TEXTS[bench.language].tooNarrow(`${stem}-ruler.pdf`, strips, least)] };
  const plan = rulerPlan(cuts, sheet, RULER_TEXTS[bench.language]);
  const data = await bench.pdf(nameOf(stock), rulerPages(plan, paperOf(output.paper), title, write));
  return { name: `${stem}-ruler.pdf`, data, about: aboutOf(bench).rulerCuts(plan.sequence.cuts) };
}

function matSvg(bench: OutputBench, mat: DrawnMat): MadeFile {
  return matFiles(mat, bench.input.project.output, bench.faces, bench.language)[0];
}

function matDxf(bench: OutputBench, mat: DrawnMat): MadeFile {
  return matFiles(mat, bench.input.project.output, bench.faces, bench.language)[1];
}

/** SVG and DXF of a mat. */
export function matFiles(
  { drawing, title, stem, about }: DrawnMat,
  output: OutputSettings,
  faces: Faces,
  language: Language,
): readonly [PlanFile, PlanFile] {
  const forDrawing = FILE_TEXTS[language].about.forDrawing(about);
  const onMat = { ...output, lines: matWishes(output.lines) };
  return [
    { name: `${stem}.svg`, data: drawingSvg(drawing, title, onMat, faces, false), about },
    { name: `${stem}.dxf`, data: drawingDxf(drawing, onMat, faces), about: forDrawing },
  ];
}

function rulerList(bench: OutputBench, { cloth, stem }: NamedCloth): MadeFile | null {
  const { project, pieces } = bench.input;
  const data = rulerText(project.name, cloth, pieces, project.output.lengths, bench.language);
  return data === null ? null : { name: `${stem}-ruler-cuts.txt`, data };
}

function aboutOf({ language }: OutputBench): (typeof FILE_TEXTS)[Language]["about"] {
  return FILE_TEXTS[language].about;
}

function cutSheetTitle({ input, language }: OutputBench): string {
  return `${input.project.name}: ${FILE_TEXTS[language].titles.cutSheet}`;
}

function nameOf({ title }: DrawnStock): string {
  return `${title.project}: ${title.material}`;
}

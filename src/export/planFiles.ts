import { pieceArt } from "../core/drawing/lay/pieceArt.ts";
import type { Drawing } from "../core/drawing/list/drawing.ts";
import { describePrinter } from "../core/drawing/sheets/printer.ts";
import { machineCautions } from "../core/job/cuttingCautions.ts";
import type { LaidCloth } from "../core/job/laidCloth.ts";
import type { Stock } from "../core/lay/problem/layProblem.ts";
import { cautionText } from "../core/materials/caution.ts";
import type { CutPiece } from "../core/materials/cutPiece.ts";
import type { OutputSettings } from "../core/project/outputSettings.ts";
import { paperOf } from "../core/project/papers.ts";
import type { Project } from "../core/project/project.ts";
import type { Language } from "../core/units/language.ts";
import { CAUTION_TABLES, FILE_TEXTS } from "../core/words/words.ts";
import type { CutSheet } from "./cutsheet/cutSheet.ts";
import { cutSheetCsv } from "./cutsheet/cutSheetCsv.ts";
import { cutSheetPages } from "./cutsheet/cutSheetPages.ts";
import { cutSheetText } from "./cutsheet/cutSheetText.ts";
import { labelPages } from "./cutsheet/labelPages.ts";
import { projectSheet } from "./cutsheet/projectSheet.ts";
import { distinctStems } from "./fileStem.ts";
import { type Faces, openFaces } from "./fonts/faces.ts";
import type { FontBytes } from "./fonts/fontBytes.ts";
import { machineMats } from "./machineMats.ts";
import { pagesPdf } from "./pdf/pagesPdf.ts";
import type { PlanFile, PlanFilesInput } from "./planFile.ts";
import {
  linesFiles,
  type PdfMaker,
  patternFiles,
  printerFinding,
  stockFiles,
  type WrittenFiles,
} from "./stockFiles.ts";

/** All files, and what could not be written as asked. */
export interface PlanFiles {
  readonly files: readonly PlanFile[];
  /** Characters no font had, as `U+65E5`. */
  readonly missingGlyphs: readonly string[];
  /** What was not written and why, in sentences. */
  readonly notes: readonly string[];
}

/** Every file of a plan: cut sheet, and for each stock that is used the drawing, the tiles and the long sheet. */
export async function planFiles(input: PlanFilesInput): Promise<PlanFiles> {
  const { project, pieces, lays, language = "en" } = input;
  const sheet = projectSheet(input);
  const art = pieceArt(pieces, project.output.lengths, language);
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
  const pdf = pdfMaker(input, missing);
  const faces = await facesFor(pieces, input.fonts);
  const files = await cutSheetFiles(sheet, project, pdf);
  const printer = printerFinding(project.output);
  const notes = printer.kind === "true" ? [] : [describePrinter(printer, language)];
  const take = (written: WrittenFiles): void => {
    files.push(...written.files);
    notes.push(...written.notes);
  };
  for (const [i, laid] of stocks.entries()) {
    take(await stockFiles({ ...input, faces }, laid, art, stems[i]!, pdf));
  }
  take(await patternFiles(input, pdf));
  const matStems = distinctStems(
    lays.map(({ material }) => material.name),
    "cloth",
  );
  for (const [i, lay] of lays.entries()) {
    const { mats, tooLarge, refusal } = machineMats(lay, pieces, project.output, language);
    files.push(
      ...matFiles(
        mats,
        `${project.name}: ${lay.material.name}`,
        matStems[i]!,
        project.output,
        faces,
        language,
      ).flat(),
    );
    if (refusal !== null) notes.push(refusal);
    if (tooLarge.length > 0) {
      notes.push(FILE_TEXTS[language].tooLarge(tooLarge.join("; "), lay.material.name));
    }
  }
  for (const caution of machineCautions(project.output.machine?.tool ?? null))
    notes.push(cautionText(caution, CAUTION_TABLES[language]));
  for (const glyph of faces.missing()) missing.add(glyph);
  return { files, missingGlyphs: [...missing].sort(), notes };
}

/** The fonts that the pieces' names need in drawings. */
export function facesFor(pieces: readonly CutPiece[], fonts: FontBytes): Promise<Faces> {
  return openFaces(
    fonts,
    pieces.map(({ name }) => name),
  );
}

async function cutSheetFiles(sheet: CutSheet, { name, output }: Project, pdf: PdfMaker): Promise<PlanFile[]> {
  const paper = paperOf(output.paper);
  const { titles, about } = FILE_TEXTS[sheet.language];
  const title = `${name}: ${titles.cutSheet}`;
  return [
    { name: "cut-sheet.pdf", data: await pdf(title, cutSheetPages(sheet, paper)), about: about.cutSheetToPrint },
    { name: "cut-sheet.txt", data: cutSheetText(sheet), about: about.cutSheetAsText },
    { name: "cut-sheet.csv", data: cutSheetCsv(sheet), about: about.cutList },
    { name: "labels.pdf", data: await pdf(title, labelPages(sheet, paper)), about: about.labels },
  ];
}

function pdfMaker({ fonts }: PlanFilesInput, missing: Set<string>): PdfMaker {
  return async (title, pages, more = {}) => {
    const made = await pagesPdf(pages, fonts, { title, ...more });
    for (const glyph of made.missingGlyphs) missing.add(glyph);
    return made.bytes;
  };
}

/** SVG and DXF of every mat. */
export function matFiles(
  mats: readonly Drawing[],
  title: string,
  stem: string,
  output: OutputSettings,
  faces: Faces,
  language: Language = "en",
): PlanFile[][] {
  return mats.map((drawing, i) => {
    const about = FILE_TEXTS[language].about.mat(i + 1, mats.length);
    return linesFiles(drawing, title, `${stem}-mat-${i + 1}`, about, output, faces, false, language);
  });
}

function usedStocks({ problem, plan }: LaidCloth): Stock[] {
  return problem.stocks.filter((stock) => plan.placements.some((placement) => placement.stockId === stock.id));
}

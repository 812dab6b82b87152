import { layDrawing } from "../core/drawing/lay/layDrawing.ts";
import { grainArrow, pieceArt } from "../core/drawing/lay/pieceArt.ts";
import { describePrinter } from "../core/drawing/sheets/printer.ts";
import { machineCautions } from "../core/job/cuttingCautions.ts";
import { cautionText } from "../core/materials/caution.ts";
import type { CutPiece } from "../core/materials/cutPiece.ts";
import type { Language } from "../core/units/language.ts";
import { CAUTION_TABLES, FILE_TEXTS } from "../core/words/words.ts";
import { projectSheet } from "./cutsheet/projectSheet.ts";
import { distinctStems } from "./fileStem.ts";
import { type Faces, type FontBytes, openFaces } from "./fonts/faces.ts";
import { drawnMats, type MachineMats, machineMats } from "./machineMats.ts";
import type { DrawnStock, NamedCloth, OutputBench, OutputItems, PdfMaker } from "./outputBench.ts";
import { OUTPUTS, type Output, type OutputId } from "./outputs.ts";
import { pagesPdf } from "./pdf/pagesPdf.ts";
import type { PlanFile, PlanFilesInput } from "./planFile.ts";
import { printerFinding, stocksInUse, titleOf } from "./tiledPages.ts";

/** Files, and what could not be written as asked. */
export interface PlanFiles {
  readonly files: readonly PlanFile[];
  /** Characters no font had, as `U+65E5`. */
  readonly missingGlyphs: readonly string[];
  /** What was not written and why, in sentences. */
  readonly notes: readonly string[];
}

/** Hears what is being written: what it is for, and how many of its pages are done. */
export type WritingTold = (label: string, done: number, pages: number) => void;

/** The files of a plan of the wanted kinds, of every kind when none is named. */
export async function planFiles(
  input: PlanFilesInput,
  wanted?: readonly OutputId[],
  told: WritingTold = () => {},
): Promise<PlanFiles> {
  const { project, pieces, language = "en" } = input;
  const missing = new Set<string>();
  let label = "";
  const faces = await facesFor(pieces, input.fonts);
  const bench: OutputBench = {
    input,
    language,
    sheet: projectSheet(input),
    art: pieceArt(pieces, project.output.lengths, language),
    faces,
    pdf: pdfMaker(input, missing, (done, pages) => told(label, done, pages)),
  };
  const files: PlanFile[] = [];
  const printer = printerFinding(project.output);
  const notes = printer.kind === "true" ? [] : [describePrinter(printer, language)];
  for (const outputs of neighbours(OUTPUTS.filter(({ id }) => wanted === undefined || wanted.includes(id)))) {
    const of = outputs[0]!.of;
    for (const item of itemsOf(bench, of, notes)) {
      for (const output of outputs) {
        label = output.label(FILE_TEXTS[language]);
        told(label, 0, 0);
        // The outputs of a group and the items are of the same kind, which the compiler cannot see.
        const made = await (output.make as (bench: OutputBench, item: unknown) => ReturnType<Output["make"]>)(
          bench,
          item,
        );
        if (made === null) continue;
        const about = label;
        files.push(...("files" in made ? made.files : [made]).map((file) => ({ about, ...file })));
        if ("notes" in made) notes.push(...made.notes);
      }
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

/** Outputs that stand next to each other and are of the same kind of thing: their files are listed thing by thing. */
function neighbours(outputs: readonly Output[]): Output[][] {
  const groups: Output[][] = [];
  for (const output of outputs) {
    const last = groups.at(-1);
    if (last?.[0]?.of === output.of) last.push(output);
    else groups.push([output]);
  }
  return groups;
}

/** What the outputs are made of; `notes` takes what there is none of and why. */
function itemsOf(
  bench: OutputBench,
  of: keyof OutputItems,
  notes: string[],
): readonly OutputItems[keyof OutputItems][] {
  if (of === "project") return [null];
  if (of === "stock") return drawnStocks(bench);
  if (of === "cloth") return namedCloths(bench);
  const { project, pieces, mats } = bench.input;
  return namedCloths(bench).flatMap(({ cloth, stem }) => {
    const found = machineMats(cloth, mats.get(cloth.material.id), pieces, project.output, bench.language);
    notes.push(...matNotes(found, cloth.material.name, bench.language));
    return drawnMats(found, project.name, cloth.material.name, stem, bench.language);
  });
}

function drawnStocks({ input, art, language }: OutputBench): DrawnStock[] {
  const stocks = input.lays.flatMap(stocksInUse);
  const stems = distinctStems(
    stocks.map(({ material, stock }, i) =>
      stocks.some((other, j) => i !== j && other.material === material)
        ? `${material.name} ${stock.id}`
        : material.name,
    ),
    "cloth",
  );
  return stocks.map((laid, i) => {
    const sheet = layDrawing(
      laid.stock,
      laid.plan,
      art,
      grainArrow(laid.material),
      language,
      [],
      laid.problem.pattern,
    );
    return {
      laid,
      sheet,
      title: titleOf(input.project, laid.material, laid.stock, sheet, language),
      stem: stems[i]!,
    };
  });
}

function namedCloths({ input }: OutputBench): NamedCloth[] {
  const stems = distinctStems(
    input.lays.map(({ material }) => material.name),
    "cloth",
  );
  return input.lays.map((cloth, i) => ({ cloth, stem: stems[i]! }));
}

function matNotes({ tooLarge, refusal }: MachineMats, material: string, language: Language): string[] {
  const tooLargeWords = tooLarge.length > 0 ? [FILE_TEXTS[language].tooLarge(tooLarge.join("; "), material)] : [];
  return [...(refusal === null ? [] : [refusal]), ...tooLargeWords];
}

function pdfMaker(
  { fonts }: PlanFilesInput,
  missing: Set<string>,
  progress: (done: number, pages: number) => void,
): PdfMaker {
  return async (title, pages, more = {}) => {
    const made = await pagesPdf(pages, fonts, { title, progress, ...more });
    for (const glyph of made.missingGlyphs) missing.add(glyph);
    return made.bytes;
  };
}

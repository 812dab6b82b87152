import { ROLE_STYLES } from "../../core/drawing/list/roleStyles.ts";
import { shift } from "../../core/geometry/affine.ts";
import { mapCurve } from "../../core/patterns/curve.ts";
import { doubledLines } from "../../core/patterns/doubledLines.ts";
import { curveBox, flattenCurve } from "../../core/patterns/measureCurve.ts";
import type { PatternDrawing, PatternLine, PatternMark } from "../../core/patterns/patternDrawing.ts";
import type { LeftOutThing, PatternProblem } from "../../core/problems/patternProblems.ts";
import { ReadingEnds, tooMuch, unreadable } from "../readingEnds.ts";
import { markedShifts } from "./markedShifts.ts";
import { type PageFrame, pageFrame } from "./pageFrame.ts";
import { type LayerBook, type PageOperations, PageWalk } from "./pageWalk.ts";
import type { PageText, ReadPage } from "./readPage.ts";
import { laidByHand, type SheetsByHand } from "./sheetsByHand.ts";

/** How the pages of a PDF belong together. */
export interface PdfOptions {
  /** Pages to read, from 1; all when left out. */
  readonly pages?: readonly number[] | undefined;
  /** Sheets laid edge to edge by hand, where they have no marks of ours. */
  readonly sheets?: SheetsByHand | undefined;
}

const MOST_PAGES = 200;
/** Room between pages that are not joined, mm. */
const APART = 20;

/**
 * The lines of a vector PDF that are drawn and can be seen, in mm: page boxes, turned pages, user units, form objects
 * and layers as the standard has them; paths that only clip are no lines. Sheets with our match marks are laid edge
 * to edge by them, others as `sheets` says, else beside one another. No script is run, nothing is fetched.
 *
 * Errors: `ReadingEnds` when the file is no PDF, is locked, or has too much in it.
 * Source: ISO 32000-1, 7.7.3, 8.3 to 8.5, 8.10, 8.11, through pdf.js.
 */
export async function readPdf(bytes: Uint8Array, options: PdfOptions): Promise<PatternDrawing> {
  const { getDocument, OPS } = await pdfEngine();
  const task = getDocument({
    data: bytes.slice(),
    verbosity: 0,
    isEvalSupported: false,
    disableFontFace: true,
    useSystemFonts: false,
    enableXfa: false,
    stopAtErrors: false,
    useWorkerFetch: false,
    disableAutoFetch: true,
    disableStream: true,
  });
  try {
    const document = await task.promise;
    const wanted = options.pages ?? Array.from({ length: document.numPages }, (_, i) => i + 1);
    if (wanted.some((page) => page < 1 || page > document.numPages)) unreadable("no-such-page");
    if (wanted.length > MOST_PAGES) tooMuch("pages", MOST_PAGES);
    const layers = layerBook(await document.getOptionalContentConfig());
    const { info } = await document.getMetadata();
    const isOwn = (info as Record<string, unknown>)["Producer"] === "Laywright";
    const leftOut = new Map<LeftOutThing, number>();
    const pages: ReadPage[] = [];
    for (const number of wanted) {
      const page = await document.getPage(number);
      const frame = pageFrame(page.view, page.rotate, page.userUnit);
      const walk = new PageWalk(OPS, layers, frame.map, frame.box);
      walk.draw((await page.getOperatorList({ annotationMode: 0 })) as unknown as PageOperations);
      for (const [thing, count] of walk.leftOut) leftOut.set(thing, (leftOut.get(thing) ?? 0) + count);
      pages.push({ frame, lines: isOwn ? walk.lines.map(ownRole) : walk.lines, texts: await textsOf(page, frame) });
      page.cleanup();
    }
    return drawingOf(pages, wanted, options, leftOut);
  } catch (error) {
    throw asProblem(error);
  } finally {
    await task.destroy();
  }
}

/** What pdf.js throws of a file that is locked or broken is the file's problem; all else is ours. */
function asProblem(error: unknown): unknown {
  const name = error instanceof Error ? error.name : "";
  if (name === "PasswordException") return new ReadingEnds({ code: "pattern-encrypted", path: "" });
  if (["InvalidPDFException", "UnknownErrorException", "FormatError", "MissingPDFException"].includes(name))
    return new ReadingEnds({ code: "pattern-unreadable", path: "", reason: "not-pdf", line: 0 });
  return error;
}

/** The part of pdf.js's optional content that tells layers on or off. */
interface OptionalContent {
  isVisible(group: unknown): boolean;
  getGroup(id: string): { readonly name?: string | null } | null;
}

function layerBook(config: unknown): LayerBook {
  const content = config as OptionalContent;
  return {
    isVisible: (group) => content.isVisible(group),
    nameOf: (group) => {
      const id = (group as { readonly id?: unknown } | null)?.id;
      return typeof id === "string" ? (content.getGroup(id)?.name ?? "") : "";
    },
  };
}

/** The part of a pdf.js page that gives its texts. */
interface TextPage {
  getTextContent(): Promise<{ readonly items: readonly unknown[] }>;
}

async function textsOf(page: TextPage, { map }: PageFrame): Promise<readonly PageText[]> {
  const { items } = await page.getTextContent();
  return items.flatMap((item): PageText[] => {
    const { str, transform, height } = item as { str?: string; transform?: readonly number[]; height?: number };
    if (!str?.trim() || !transform) return [];
    const [, , , , x, y] = transform as [number, number, number, number, number, number];
    return [
      {
        text: str.replace(/\s+/gu, " ").trim().slice(0, 500),
        x: map[0] * x + map[2] * y + map[4],
        y: map[1] * x + map[3] * y + map[5],
        size: (height ?? 0) * Math.hypot(map[0], map[1]),
      },
    ];
  });
}

function drawingOf(
  pages: readonly ReadPage[],
  numbers: readonly number[],
  options: PdfOptions,
  leftOut: ReadonlyMap<LeftOutThing, number>,
): PatternDrawing {
  const problems: PatternProblem[] = [...leftOut].map(([thing, count]) => ({
    code: "pattern-left-out",
    path: "",
    thing,
    count,
  }));
  const unit = { name: "px72", ofMm: 25.4 / 72 };
  const marked = options.sheets ? null : markedShifts(pages);
  if (options.sheets) {
    const { lines, marks } = laidByHand(pages, options.sheets);
    return { kind: "pdf", unit, lines, marks, problems };
  }
  if (marked === null && pages.length > 1)
    problems.push({ code: "pattern-pages-apart", path: "", count: pages.length });
  const shifts = marked ?? besideOneAnother(pages);
  const lines = pages.flatMap((page, i) => {
    const map = shift(...shifts[i]!);
    const layer = pages.length > 1 && marked === null ? `page ${numbers[i]}` : "";
    return page.lines
      .filter(({ names }) => names[0] !== "sheet")
      .map((line) => ({ ...line, layer: line.layer || layer, curve: mapCurve(line.curve, map) }));
  });
  const marks = pages.flatMap((page, i) =>
    page.texts.map(
      ({ text, x, y }): PatternMark => ({
        kind: "text",
        x: x + shifts[i]![0],
        y: y + shifts[i]![1],
        text,
        layer: "",
      }),
    ),
  );
  return { kind: "pdf", unit, lines: marked ? withoutRepeats(lines) : lines, marks, problems };
}

function besideOneAnother(pages: readonly ReadPage[]): readonly (readonly [number, number])[] {
  let x = 0;
  return pages.map(({ frame }) => {
    const at = [x, 0] as const;
    x += frame.box.maxX + APART;
    return at;
  });
}

const ROLES: ReadonlyMap<string, string> = new Map(
  Object.entries(ROLE_STYLES).map(([role, { color }]) => [color, role]),
);

/** In a PDF of our own, each role has its colour; written to three decimals, it reads back to the same one. */
export function ownRole(line: PatternLine): PatternLine {
  const role = line.color === null ? undefined : ROLES.get(line.color);
  return role === undefined ? line : { ...line, layer: role, names: [role] };
}

/** Lines of joined sheets, each once: what reaches over a joint is drawn whole on both. */
export function withoutRepeats(lines: readonly PatternLine[]): readonly PatternLine[] {
  const compared = lines.map(({ curve }) => ({
    points: Float64Array.from(flattenCurve(curve, 0.05, 200)),
    closed: curve.closed,
    box: curveBox(curve),
  }));
  const repeated = doubledLines(compared);
  return lines.filter((_, i) => !repeated.has(i));
}

/** The parts of pdf.js that a reader of lines needs, loaded when the first PDF comes. */
export interface PdfEngine {
  readonly getDocument: typeof import("pdfjs-dist/legacy/build/pdf.mjs").getDocument;
  readonly OPS: Readonly<Record<string, number>>;
}

/**
 * Loads pdf.js for a thread that draws nothing: its worker half runs in the same thread, and the shapes that it looks
 * for in a browser are only named.
 */
export async function pdfEngine(): Promise<PdfEngine> {
  const shared = globalThis as Record<string, unknown>;
  for (const name of ["DOMMatrix", "ImageData", "Path2D"]) shared[name] ??= class {};
  // @ts-expect-error: this half has no types; it is only handed over.
  shared["pdfjsWorker"] ??= await import("pdfjs-dist/legacy/build/pdf.worker.mjs");
  const { getDocument, OPS } = await import("pdfjs-dist/legacy/build/pdf.mjs");
  return { getDocument, OPS: OPS as unknown as Readonly<Record<string, number>> };
}

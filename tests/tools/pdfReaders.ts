// PDF read by programs that we did not write: PDFium and qpdf as WebAssembly on every machine, poppler where it is.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { PDFiumLibrary } from "@hyzyla/pdfium";
import initQpdf from "@neslinesli93/qpdf-wasm";
import { freshFolder, type Grey, readPgm, run } from "./programs.ts";
import { ifInstalled } from "./systemPrograms.ts";

/** A page as a picture, and how many pixels of it are one millimetre. */
export interface PagePicture extends Grey {
  readonly perMm: { readonly x: number; readonly y: number };
}

/** Draws pages; they are counted from 1. */
export interface PdfDrawer {
  readonly name: string;
  draw(path: string, page: number, dpi: number): Promise<PagePicture>;
}

const MM_PER_PT = 25.4 / 72;
let pdfium: Promise<PDFiumLibrary> | null = null;

/** What `use` makes of a document. */
async function opened<T>(
  path: string,
  use: (document: Awaited<ReturnType<PDFiumLibrary["loadDocument"]>>) => T | Promise<T>,
): Promise<T> {
  pdfium ??= PDFiumLibrary.init();
  const document = await (await pdfium).loadDocument(readFileSync(path));
  try {
    return await use(document);
  } finally {
    document.destroy();
  }
}

const PDFIUM: PdfDrawer = {
  name: "PDFium",
  draw: (path, number, dpi) =>
    opened(path, async (document) => {
      const page = document.getPage(number - 1);
      const { originalWidth, originalHeight } = page.getOriginalSize();
      const [width, height] = [Math.round((originalWidth * dpi) / 72), Math.round((originalHeight * dpi) / 72)];
      const { data } = await page.render({ width, height, scale: 1, render: "bitmap", colorSpace: "Gray" });
      const perMm = { x: width / (originalWidth * MM_PER_PT), y: height / (originalHeight * MM_PER_PT) };
      return { width, height, data, perMm };
    }),
};

const POPPLER: PdfDrawer = {
  name: "poppler",
  draw: async (path, page, dpi) => {
    const stem = join(freshFolder(), "page");
    const number = String(page);
    run("pdftoppm", ["-f", number, "-l", number, "-r", String(dpi), "-gray", "-singlefile", path, stem]);
    return { ...readPgm(`${stem}.pgm`), perMm: { x: dpi / 25.4, y: dpi / 25.4 } };
  },
};

/** The drawers of this machine. */
export const PDF_DRAWERS: readonly PdfDrawer[] = [PDFIUM, ...ifInstalled("pdftoppm").map(() => POPPLER)];

/** Sizes of all pages in points, as PDFium shows them. */
export function pageSizes(path: string): Promise<{ readonly width: number; readonly height: number }[]> {
  return opened(path, (document) =>
    [...document.pages()].map((page) => {
      const { originalWidth, originalHeight } = page.getOriginalSize();
      return { width: originalWidth, height: originalHeight };
    }),
  );
}

/** The words of all pages in their order, as PDFium reads them. */
export function pdfWords(path: string): Promise<string> {
  return opened(path, (document) => [...document.pages()].map((page) => page.getText()).join("\n"));
}

/** The same file locked with a password, by qpdf. */
export async function lockedPdf(bytes: Uint8Array): Promise<Uint8Array> {
  const { qpdf, files } = await qpdfAtHand();
  files.writeFile("/open.pdf", bytes);
  const status = qpdf.callMain(["--encrypt", "secret", "owner", "256", "--", "/open.pdf", "/locked.pdf"]);
  if (status !== 0) throw new Error(`qpdf --encrypt ends with ${status}`);
  return files.readFile("/locked.pdf");
}

async function qpdfAtHand() {
  const wasm = createRequire(import.meta.url).resolve("@neslinesli93/qpdf-wasm/dist/qpdf.wasm");
  const qpdf = await initQpdf({ locateFile: () => wasm });
  const files = qpdf.FS as typeof qpdf.FS & { writeFile(name: string, data: Uint8Array): void };
  return { qpdf, files };
}

/** A PDF object as qpdf writes it in JSON: dictionaries with `/Names`. */
export type PdfDictionary = Readonly<Record<string, unknown>>;

/**
 * Every object of a file that is a dictionary or a stream's, as qpdf reads them. Throws when qpdf finds anything wrong
 * with the file or a stream in it.
 */
export async function pdfObjects(path: string): Promise<PdfDictionary[]> {
  const { qpdf, files } = await qpdfAtHand();
  files.writeFile("/in.pdf", readFileSync(path));
  // Decodes every stream; anything amiss is a warning, and a warning is status 3.
  for (const args of [
    ["--qdf", "/in.pdf", "/plain.pdf"],
    ["--json-output", "/in.pdf", "/out.json"],
  ]) {
    const status = qpdf.callMain(args);
    if (status !== 0) throw new Error(`qpdf ${args[0]} ends with ${status}`);
  }
  const [, objects] = JSON.parse(new TextDecoder().decode(files.readFile("/out.json"))).qpdf;
  return Object.values(objects as Record<string, { value?: unknown; stream?: { dict: unknown } }>)
    .map(({ value, stream }) => value ?? stream?.dict)
    .filter((value): value is PdfDictionary => typeof value === "object" && value !== null);
}

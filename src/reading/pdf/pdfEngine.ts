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

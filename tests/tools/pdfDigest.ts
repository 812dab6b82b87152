import { createHash } from "node:crypto";
import { decodePDFRawStream, PDFArray, PDFDocument, type PDFPage, PDFRawStream } from "pdf-lib";

/**
 * A PDF in a few lines of text: its title, and for each page the size in points, how much is drawn, and a hash of the
 * uncompressed content stream. Fonts and compression are left out: they say nothing about what was drawn.
 */
export async function pdfDigest(bytes: Uint8Array): Promise<string> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  const pages = pdf.getPages().map((page, i) => `page ${i + 1}: ${pageDigest(page)}`);
  return `${[pdf.getTitle() ?? "", ...pages].join("\n")}\n`;
}

function pageDigest(page: PDFPage): string {
  const { width, height } = page.getSize();
  const content = contentOf(page);
  const count = (operator: string): number =>
    content.split("\n").filter((line) => line.endsWith(` ${operator}`)).length;
  const hash = createHash("sha256").update(content, "latin1").digest("hex").slice(0, 16);
  return `${width.toFixed(2)} x ${height.toFixed(2)} pt, ${count("l")} lines, ${count("c")} curves, ${count("Tj")} texts, content ${hash}`;
}

function contentOf(page: PDFPage): string {
  const contents = page.node.Contents();
  const streams =
    contents instanceof PDFArray ? contents.asArray().map((ref) => page.doc.context.lookup(ref)) : [contents];
  const texts = streams.map((stream) => {
    if (!(stream instanceof PDFRawStream)) throw new TypeError("pdfDigest: a page's content is not a raw stream");
    return Buffer.from(decodePDFRawStream(stream).decode()).toString("latin1");
  });
  return texts.join("\n");
}

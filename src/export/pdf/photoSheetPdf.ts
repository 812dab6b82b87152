import { PDFDocument, type PDFFont, type PDFPage, PrintScaling, rgb, StandardFonts } from "pdf-lib";
import { CHECK_LINE, PHOTO_WINDOW, RING, RING_CORNERS, RING_OTHERS } from "../../core/patterns/photoSheet.ts";
import type { Language } from "../../core/units/language.ts";
import { FILE_TEXTS } from "../../core/words/words.ts";

/** mm in points. Source: ISO 32000-1, 8.3.2.3. */
const MM = 72 / 25.4;
const BLACK = rgb(0, 0, 0);

/** Our photo sheet on a page of paper, mm: rings, a line of 100 mm to hold a ruler to, and how to use it. */
export async function photoSheetPdf(
  paper: { readonly width: number; readonly height: number },
  language: Language,
): Promise<Uint8Array> {
  const texts = FILE_TEXTS[language].photoSheet;
  const doc = await PDFDocument.create({ updateMetadata: false });
  doc.setTitle(texts.title, { showInWindowTitleBar: true });
  doc.setProducer("Laywright");
  doc.setCreator("Laywright");
  doc.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const font = await doc.embedFont(StandardFonts.Helvetica);
  const page = doc.addPage([paper.width * MM, paper.height * MM]);
  const at = (x: number, y: number) => ({ x: (paper.width / 2 + x) * MM, y: (paper.height / 2 + y) * MM });
  for (const [x, y] of [...RING_CORNERS, ...RING_OTHERS]) {
    page.drawCircle({ ...at(x, y), size: RING.outer * MM, color: BLACK });
    page.drawCircle({ ...at(x, y), size: RING.inner * MM, color: rgb(1, 1, 1) });
    page.drawCircle({ ...at(x, y), size: RING.dot * MM, color: BLACK });
  }
  const half = CHECK_LINE / 2;
  const level = PHOTO_WINDOW.y + 5;
  const line = (x0: number, y0: number, x1: number, y1: number): void =>
    page.drawLine({ start: at(x0, y0), end: at(x1, y1), thickness: 0.3 * MM, color: BLACK });
  line(-half, level, half, level);
  for (const end of [-half, half]) line(end, level - 2, end, level + 2);
  centred(page, font, texts.measure, at(0, level + 3), 8);
  centred(page, font, texts.title, at(0, level + 13), 12);
  texts.use.forEach((text, i) => {
    centred(page, font, text, at(0, -PHOTO_WINDOW.y - 30 - 5 * i), 9);
  });
  return doc.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}

function centred(
  page: PDFPage,
  font: PDFFont,
  text: string,
  { x, y }: { x: number; y: number },
  size: number,
): void {
  page.drawText(text, { x: x - font.widthOfTextAtSize(text, size) / 2, y, size, font, color: BLACK });
}

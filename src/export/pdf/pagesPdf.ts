import { strToU8, zlibSync } from "fflate";
import { type PDFContext, PDFDocument, PDFName, PDFNumber, type PDFRef, PrintScaling } from "pdf-lib";
import type { Page } from "../../core/drawing/list/page.ts";
import { ROLE_STYLES, type RoleStyles } from "../../core/drawing/list/roleStyles.ts";
import { plainLine } from "../../core/drawing/list/textWidth.ts";
import type { FontBytes } from "../fonts/faces.ts";
import { pageContent } from "./content.ts";
import { makeTypesetter } from "./typesetter.ts";

/** What a PDF is called and how its lines look. */
export interface PdfOptions {
  readonly title: string;
  readonly styles?: RoleStyles;
  /** Colour of the whole page, `#rrggbb`; paper is left as it is when left out. */
  readonly background?: string;
  /** Hears how many of the pages are done, now and then. */
  readonly progress?: (done: number, pages: number) => void;
}

/** The file, and what could not be written as asked. */
export interface PdfFile {
  readonly bytes: Uint8Array;
  /** Characters no font had, as `U+65E5`; they stand in the file as their number in brackets. */
  readonly missingGlyphs: readonly string[];
}

/** A point in mm. Source: ISO 32000-1, 8.3.2.3 (default user space unit 1/72 in). */
const POINT = 25.4 / 72;
/** Largest page side in user units that every reader takes. Source: ISO 32000-1, annex C. */
const LARGEST = 14_400;

/** Pages after which it is told how far the writing is. */
const TELL = 50;

/**
 * Pages as one PDF at true size, page boxes exact, fonts embedded as subsets. Sides above 5.08 m use the page's own
 * `UserUnit`. No date is written, so that the same pages and fonts give the same bytes.
 */
export async function pagesPdf(pages: readonly Page[], fonts: FontBytes, options: PdfOptions): Promise<PdfFile> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  doc.setTitle(plainLine(options.title), { showInWindowTitleBar: true });
  doc.setProducer("Laywright");
  doc.setCreator("Laywright");
  // Readers that honour it offer "actual size" instead of "fit" in their print window.
  doc.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const type = await makeTypesetter(doc, fonts, textsOf(pages));
  const { context } = doc;
  // Sheets share one dictionary of fonts; pdf-lib's own pages each have theirs and are put in at a cost of all before.
  const resources = context.nextRef();
  const tree = doc.catalog.Pages();
  const parent = doc.catalog.get(PDFName.of("Pages")) as PDFRef;
  for (const [done, page] of pages.entries()) {
    if (done > 0 && done % TELL === 0) options.progress?.(done, pages.length);
    const points = Math.max(page.width, page.height) / POINT;
    const userUnit = Math.max(1, Math.ceil(points / LARGEST));
    const unit = POINT * userUnit;
    const content = pageContent(page, {
      styles: options.styles ?? ROLE_STYLES,
      unit,
      type,
      background: options.background,
    });
    const sheet = context.obj({
      Type: "Page",
      Parent: parent,
      MediaBox: [0, 0, page.width / unit, page.height / unit],
      Resources: resources,
      Contents: context.register(packed(context, content)),
      ...(userUnit > 1 ? { UserUnit: userUnit } : {}),
    });
    tree.Kids().push(context.register(sheet));
  }
  tree.set(PDFName.of("Count"), PDFNumber.of(tree.Kids().size()));
  const shared = Object.fromEntries([...type.used()].map(([name, font]) => [name, font.ref]));
  context.assign(resources, context.obj({ Font: shared }));
  const bytes = await doc.save({
    useObjectStreams: true,
    addDefaultPage: false,
    updateFieldAppearances: false,
    // A rest of a millisecond after each fifty objects is a sixth of the time of a batch; no host of ours needs it.
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
  return { bytes, missingGlyphs: type.missing() };
}

/** A content stream, packed. Its signs are those of ASCII: texts stand in it as glyph numbers. */
function packed(context: PDFContext, content: string): ReturnType<PDFContext["stream"]> {
  return context.stream(zlibSync(strToU8(content)), { Filter: "FlateDecode" });
}

function* textsOf(pages: readonly Page[]): Generator<string> {
  for (const page of pages) {
    for (const part of page.parts) for (const item of part.items) if (item.kind === "text") yield item.text;
  }
}

import type { PDFDocument, PDFFont } from "pdf-lib";
import { type Face, type FontBytes, openFaces, parsedFont } from "../fonts/faces.ts";

/** A stretch of text in one font, ready for a content stream. */
export interface TextRun {
  /** Name of the font resource. */
  readonly font: string;
  /** Glyph codes as a hex string, with its angle brackets. */
  readonly codes: string;
  /** Advance at em height 1. */
  readonly width: number;
}

/** One tag for each face, so that the same file has the same names every time. */
const SUBSET_TAGS = ["LAYWRA", "LAYWRB", "LAYWRC", "LAYWRD", "LAYWRE", "LAYWRF"];

/** Sets text in the document's embedded fonts; only the glyphs used end up in the file. */
export interface Typesetter {
  runs(text: string, bold: boolean): readonly TextRun[];
  /** Fonts used so far, by resource name. */
  used(): ReadonlyMap<string, PDFFont>;
  /** Characters no font had, as `U+65E5`; each was drawn as its number in brackets. */
  missing(): readonly string[];
}

/** Embeds the fonts that `texts` need, and sets any of them. */
export async function makeTypesetter(
  doc: PDFDocument,
  bytes: FontBytes,
  texts: Iterable<string>,
): Promise<Typesetter> {
  doc.registerFontkit({ create: parsedFont });
  const faces = await openFaces(bytes, texts);
  const fonts = new Map<string, EmbeddedFace>();
  for (const [i, face] of faces.all.entries()) fonts.set(face.name, await embedded(doc, face, SUBSET_TAGS[i]!));
  const used = new Map<string, PDFFont>();
  const cache = new Map<string, readonly TextRun[]>();
  const runs = (text: string, isBold: boolean): readonly TextRun[] => {
    const key = `${isBold ? "b" : "r"}${text}`;
    const known = cache.get(key);
    if (known) return known;
    const out = faces.split(text, isBold).map(({ face, text: part }) => {
      const own = fonts.get(face.name)!;
      used.set(face.name, own.font);
      return { font: face.name, ...own.set(part) };
    });
    cache.set(key, out);
    return out;
  };
  return { runs, used: () => used, missing: faces.missing };
}

interface SetText {
  readonly codes: string;
  readonly width: number;
}

interface EmbeddedFace {
  readonly font: PDFFont;
  set(text: string): SetText;
}

/**
 * Writing whose letters neither join nor change places: one glyph a character, whatever stands beside it. Latin, Greek,
 * Cyrillic, punctuation, arrows and signs, kana, ideographs, Hangul syllables.
 */
const APART =
  /^[ -~\u00a0-\u024f\u0388-\u03ff\u0400-\u0482\u048a-\u052f\u2010-\u2027\u2030-\u205e\u20a0-\u20bf\u2100-\u2bff\u3041-\u3096\u30a0-\u30ff\u4e00-\u9fff\uac00-\ud7a3]*$/u;

async function embedded(doc: PDFDocument, face: Face, tag: string): Promise<EmbeddedFace> {
  // The tag that a subset's name begins with. Source: ISO 32000-1, 9.6.4.
  const customName = `${tag}+${face.font.postscriptName ?? face.name}`;
  const font = await doc.embedFont(face.file, { subset: true, customName });
  const signs = new Map<string, SetText>();
  const shaped = (text: string): SetText => ({
    codes: font.encodeText(text).toString(),
    width: font.widthOfTextAtSize(text, 1),
  });
  // Shaping a text costs a hundred times as much as looking its letters up.
  const lookedUp = (text: string): SetText => {
    let codes = "";
    let width = 0;
    for (const sign of text) {
      const known = signs.get(sign) ?? shaped(sign);
      signs.set(sign, known);
      codes += known.codes.slice(1, -1);
      width += known.width;
    }
    return { codes: `<${codes}>`, width };
  };
  return { font, set: (text) => (APART.test(text) ? lookedUp(text) : shaped(text)) };
}

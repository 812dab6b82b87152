import fontkit, { type Font } from "@pdf-lib/fontkit";
import type { PDFDocument, PDFFont } from "pdf-lib";
import { plainLine } from "../../core/drawing/textWidth.ts";
import type { FontBytes } from "../fonts/fontBytes.ts";
import { unpackWoff } from "../fonts/unpackWoff.ts";

/** A stretch of text in one font, ready for a content stream. */
export interface TextRun {
  /** Name of the font resource. */
  readonly font: string;
  /** Glyph codes as a hex string, with its angle brackets. */
  readonly codes: string;
  /** Advance at em height 1. */
  readonly width: number;
}

const parsed = new WeakMap<Uint8Array, Font>();
const readFonts = new WeakMap<() => Promise<Uint8Array>, Promise<Uint8Array>>();

/** A font file parsed once, however many documents embed it: unpacking a large font takes a second. */
function parsedFont(file: Uint8Array): Font {
  const known = parsed.get(file) ?? fontkit.create(file);
  parsed.set(file, known);
  return known;
}

function readOnce(read: () => Promise<Uint8Array>): Promise<Uint8Array> {
  const known = readFonts.get(read) ?? read().then(unpackWoff);
  readFonts.set(read, known);
  return known;
}

/** One tag for each face, so that the same file has the same names every time. */
const SUBSET_TAGS = ["LAYWRA", "LAYWRB", "LAYWRC", "LAYWRD", "LAYWRE", "LAYWRF"];

interface Face {
  readonly name: string;
  readonly font: PDFFont;
  readonly has: (code: number) => boolean;
}

/** Sets text in the document's embedded fonts; only the glyphs used end up in the file. */
export interface Typesetter {
  runs(text: string, bold: boolean): readonly TextRun[];
  /** Fonts used so far, by resource name. */
  used(): ReadonlyMap<string, PDFFont>;
  /** Characters no font had, as `U+65E5`; each was drawn as its number in brackets. */
  missing(): readonly string[];
}

/**
 * Embeds the fonts that `texts` need; a fallback is read and embedded only when the ones before it lack a character.
 * Cost: parses each font it needs once.
 */
export async function makeTypesetter(
  doc: PDFDocument,
  bytes: FontBytes,
  texts: Iterable<string>,
): Promise<Typesetter> {
  doc.registerFontkit({ create: parsedFont });
  const face = async (name: string, file: Uint8Array): Promise<Face> => {
    const known = parsedFont(file);
    // The tag that a subset's name begins with. Source: ISO 32000-1, 9.6.4.
    const customName = `${SUBSET_TAGS[Number(name.slice(1)) % SUBSET_TAGS.length]}+${known.postscriptName ?? name}`;
    const font = await doc.embedFont(file, { subset: true, customName });
    return { name, font, has: (code) => known.hasGlyphForCodePoint(code) };
  };
  const regular = await face("F0", bytes.regular);
  const bold = await face("F1", bytes.bold);
  const others: Face[] = [];
  let lacking = new Set<number>();
  for (const text of texts) {
    for (const char of plainLine(text)) {
      const code = char.codePointAt(0)!;
      if (!regular.has(code) && !joinsBefore(code)) lacking.add(code);
    }
  }
  for (const [i, read] of bytes.fallbacks.entries()) {
    if (lacking.size === 0) break;
    const other = await face(`F${i + 2}`, await readOnce(read));
    others.push(other);
    lacking = new Set([...lacking].filter((code) => !other.has(code)));
  }
  const used = new Map<string, PDFFont>();
  const missing = new Set<string>();
  const cache = new Map<string, readonly TextRun[]>();
  const runs = (text: string, isBold: boolean): readonly TextRun[] => {
    const key = `${isBold ? "b" : "r"}${text}`;
    const known = cache.get(key);
    if (known) return known;
    const faces = isBold ? [bold, regular, ...others] : [regular, ...others];
    const out = splitByFace(plainLine(text), faces, missing).map(([at, part]) => {
      used.set(at.name, at.font);
      return {
        font: at.name,
        codes: at.font.encodeText(part).toString(),
        width: at.font.widthOfTextAtSize(part, 1),
      };
    });
    cache.set(key, out);
    return out;
  };
  return { runs, used: () => used, missing: () => [...missing].sort() };
}

/** Joiners and variation selectors: they belong to what stands before them and have no glyph in many fonts. */
function joinsBefore(code: number): boolean {
  return code === 0x200c || code === 0x200d || (code >= 0xfe00 && code <= 0xfe0f);
}

/** Cuts a text where the font must change; a character that no font has becomes its number in brackets. */
function splitByFace(text: string, faces: readonly Face[], missing: Set<string>): [Face, string][] {
  const parts: [Face, string][] = [];
  const add = (face: Face, part: string): void => {
    const last = parts.at(-1);
    if (last && last[0] === face) last[1] += part;
    else parts.push([face, part]);
  };
  for (const char of text) {
    const code = char.codePointAt(0)!;
    const last = parts.at(-1);
    if (joinsBefore(code) && last) {
      if (last[0].has(code)) last[1] += char;
      continue;
    }
    const face = faces.find((one) => one.has(code));
    if (face) {
      add(face, char);
      continue;
    }
    const number = code.toString(16).toUpperCase().padStart(4, "0");
    missing.add(`U+${number}`);
    add(faces[0]!, `[${number}]`);
  }
  return parts;
}

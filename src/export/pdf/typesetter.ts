import fontkit from "@pdf-lib/fontkit";
import type { PDFDocument, PDFFont } from "pdf-lib";
import { plainLine } from "../../core/drawing/textWidth.ts";
import type { FontBytes } from "../fonts/fontBytes.ts";

/** A stretch of text in one font, ready for a content stream. */
export interface TextRun {
  /** Name of the font resource. */
  readonly font: string;
  /** Glyph codes as a hex string, with its angle brackets. */
  readonly codes: string;
  /** Advance at em height 1. */
  readonly width: number;
}

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

/** Embeds the fonts. Cost: parses each font's tables once; a fallback is embedded only when it is needed. */
export async function makeTypesetter(doc: PDFDocument, bytes: FontBytes): Promise<Typesetter> {
  doc.registerFontkit(fontkit);
  const face = async (name: string, file: Uint8Array): Promise<Face> => {
    const known = fontkit.create(file);
    const font = await doc.embedFont(file, { subset: true });
    return { name, font, has: (code) => known.hasGlyphForCodePoint(code) };
  };
  const regular = await face("F0", bytes.regular);
  const bold = await face("F1", bytes.bold);
  const others: Face[] = [];
  for (const [i, file] of bytes.fallbacks.entries()) others.push(await face(`F${i + 2}`, file));
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
    // Marks that join or vary what stands before them have no glyph of their own in many fonts.
    const joins = code === 0x200c || code === 0x200d || (code >= 0xfe00 && code <= 0xfe0f);
    const last = parts.at(-1);
    if (joins && last) {
      if (last[0].has(code)) last[1] += char;
      continue;
    }
    const face =
      (last?.[0].has(code) && char !== " " ? faces.find((f) => f.has(code)) : undefined) ??
      faces.find((f) => f.has(code));
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

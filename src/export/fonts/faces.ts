import fontkit, { type Font, type GlyphRun } from "@pdf-lib/fontkit";
import { plainLine } from "../../core/drawing/list/textWidth.ts";
import { unpackFont } from "./unpackWoff.ts";

/**
 * Font files as bytes (TrueType or OpenType), read by the host: from disk in the CLI, by fetch in the browser.
 * `fallbacks` may be packed in any way that `unpackFont` knows; they are asked in turn for characters that the first fonts lack, and read only when there are any.
 */
export interface FontBytes {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly fallbacks: readonly (() => Promise<Uint8Array>)[];
}

/** One font, parsed. */
export interface Face {
  /** Short and the same every time: `F0`, `F1` … */
  readonly name: string;
  readonly file: Uint8Array;
  readonly font: Font;
}

/** A stretch of text that one font can set. */
export interface FacedText {
  readonly face: Face;
  readonly text: string;
}

/** Fonts that together set what they were opened for. */
export interface Faces {
  readonly all: readonly Face[];
  /** The text cut where the font must change; a character that no font has becomes its number, as `[U+1F45C]`. */
  split(text: string, bold: boolean): readonly FacedText[];
  /** Characters no font had so far, as `U+65E5`. */
  missing(): readonly string[];
}

const parsed = new WeakMap<Uint8Array, Font>();
const readFonts = new WeakMap<() => Promise<Uint8Array>, Promise<Uint8Array>>();

/** A font file parsed once, however many documents use it: unpacking a large font takes a second. */
export function parsedFont(file: Uint8Array): Font {
  const known = parsed.get(file) ?? shapingOnce(fontkit.create(file));
  parsed.set(file, known);
  return known;
}

/** Texts that a font remembers; with one more it forgets them all. */
const MOST_SHAPED = 4000;
/** Longer ones, UTF-16 units, hardly come twice. */
const LONGEST_SHAPED = 80;

/**
 * A font that shapes a text once: the names and signs of a project stand in a dozen of its files, and in those of the
 * next order of the same bag. Who wants features of the font turned on or off gets them as before.
 */
function shapingOnce(font: Font): Font {
  const shape = font.layout.bind(font);
  const known = new Map<string, GlyphRun>();
  font.layout = (text, features) => {
    if (features !== undefined || text.length > LONGEST_SHAPED) return shape(text, features);
    const run = known.get(text) ?? shape(text);
    if (known.size >= MOST_SHAPED) known.clear();
    known.set(text, run);
    return run;
  };
  return font;
}

function readOnce(read: () => Promise<Uint8Array>): Promise<Uint8Array> {
  const known = readFonts.get(read) ?? read().then(unpackFont);
  readFonts.set(read, known);
  return known;
}

/**
 * The fonts that `texts` need: a fallback is read only when the ones before it lack a character.
 * Cost: parses each font it needs once in the life of the program.
 */
export async function openFaces(bytes: FontBytes, texts: Iterable<string>): Promise<Faces> {
  const face = (name: string, file: Uint8Array): Face => ({ name, file, font: parsedFont(file) });
  const regular = face("F0", bytes.regular);
  const bold = face("F1", bytes.bold);
  const others: Face[] = [];
  let lacking = codesLackedBy(regular, texts);
  for (const [i, read] of bytes.fallbacks.entries()) {
    if (lacking.length === 0) break;
    const other = face(`F${i + 2}`, await readOnce(read));
    const left = lacking.filter((code) => !has(other, code));
    // A font with none of what is wanted is not put into the file.
    if (left.length < lacking.length) others.push(other);
    lacking = left;
  }
  const missing = new Set<string>();
  const split = (text: string, isBold: boolean): readonly FacedText[] =>
    splitByFace(plainLine(text), isBold ? [bold, regular, ...others] : [regular, ...others], missing);
  return { all: [regular, bold, ...others], split, missing: () => [...missing].sort() };
}

const has = ({ font }: Face, code: number): boolean => font.hasGlyphForCodePoint(code);

function codesLackedBy(face: Face, texts: Iterable<string>): number[] {
  const seen = new Set<string>();
  const lacking = new Set<number>();
  for (const text of texts) {
    if (seen.has(text)) continue;
    seen.add(text);
    for (const char of plainLine(text)) {
      const code = char.codePointAt(0)!;
      if (!has(face, code) && !joinsBefore(code)) lacking.add(code);
    }
  }
  return [...lacking];
}

/** Joiners and variation selectors: they belong to what stands before them and have no glyph in many fonts. */
function joinsBefore(code: number): boolean {
  return code === 0x200c || code === 0x200d || (code >= 0xfe00 && code <= 0xfe0f);
}

function splitByFace(text: string, faces: readonly Face[], missing: Set<string>): FacedText[] {
  const parts: { face: Face; text: string }[] = [];
  const add = (face: Face, part: string): void => {
    const last = parts.at(-1);
    if (last && last.face === face) last.text += part;
    else parts.push({ face, text: part });
  };
  for (const char of text) {
    const code = char.codePointAt(0)!;
    const last = parts.at(-1);
    if (joinsBefore(code) && last) {
      if (has(last.face, code)) last.text += char;
      continue;
    }
    const face = faces.find((one) => has(one, code));
    if (face) {
      add(face, char);
      continue;
    }
    const number = `U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
    missing.add(number);
    add(faces[0]!, `[${number}]`);
  }
  return parts;
}

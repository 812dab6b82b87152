import type { PatternKind } from "../../core/patterns/patternDrawing.ts";
import { pluralOf } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";

const pluralEn = pluralOf("en");
const pluralDe = pluralOf("de");

/** What `pattern` says of a file that came in, in one language; a language that lacks a word does not compile. */
export interface PatternTexts {
  readonly title: (path: string, kind: PatternKind, lines: number) => string;
  readonly closed: string;
  readonly open: string;
  readonly edges: (straight: number, arcs: number) => string;
  readonly more: (lines: number) => string;
  readonly texts: (count: number) => string;
  /** `names` is empty when no line closes. */
  readonly added: (path: string, names: string) => string;
}

const KINDS: Readonly<Record<PatternKind, string>> = { svg: "SVG", dxf: "DXF", pdf: "PDF", image: "picture" };

const en: PatternTexts = {
  title: (path, kind, lines) => `${path}, ${KINDS[kind]}: ${pluralEn(lines, "1 line", `${lines} lines`)}`,
  closed: "closed",
  open: "open",
  edges: (straight, arcs) =>
    [straight > 0 ? `${straight} straight` : "", arcs > 0 ? pluralEn(arcs, "1 arc", `${arcs} arcs`) : ""]
      .filter(Boolean)
      .join(" + "),
  more: (lines) => `and ${lines} more; --json has them all`,
  texts: (count) => pluralEn(count, "1 text", `${count} texts`),
  added: (path, names) =>
    names === "" ? `Nothing was added to ${path}: no cut or stitch line closes.` : `Added to ${path}: ${names}`,
};

const de: PatternTexts = {
  title: (path, kind, lines) =>
    `${path}, ${kind === "image" ? "Bild" : KINDS[kind]}: ${pluralDe(lines, "1 Linie", `${lines} Linien`)}`,
  closed: "geschlossen",
  open: "offen",
  edges: (straight, arcs) =>
    [straight > 0 ? `${straight} gerade` : "", arcs > 0 ? pluralDe(arcs, "1 Bogen", `${arcs} Bögen`) : ""]
      .filter(Boolean)
      .join(" + "),
  more: (lines) => `und ${lines} weitere; --json nennt alle`,
  texts: (count) => pluralDe(count, "1 Text", `${count} Texte`),
  added: (path, names) =>
    names === ""
      ? `Nichts kam nach ${path}: Keine Schnitt- oder Nahtlinie ist geschlossen.`
      : `In ${path} eingetragen: ${names}`,
};

/** The sentences of each language. */
export const PATTERN_TEXTS: ByLanguage<PatternTexts> = inEveryLanguage({ en, de });

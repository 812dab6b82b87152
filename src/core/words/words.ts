import type { CautionTable } from "../materials/caution.ts";
import type { Sentences } from "../problems/problem.ts";
import { de } from "./de/de.ts";
import { en } from "./en/en.ts";
import type { FileTexts } from "./fileTexts.ts";
import { fr } from "./fr/fr.ts";
import { type Words, withEnglish } from "./oneLanguage.ts";
import type { PanelWords } from "./panelWords.ts";
import type { PaperTexts } from "./paperTexts.ts";
import type { RulerTexts } from "./rulerTexts.ts";
import type { SheetTexts } from "./sheetTexts.ts";
import type { ShoppingTexts } from "./shoppingTexts.ts";
import type { StrapWords } from "./strapWords.ts";

/**
 * Languages that sentences are written in, by their tags (RFC 5646). Another one is a folder like these, its tag here and
 * its row below; one that is not whole is brought in `withEnglish`.
 */
export const LANGUAGES = ["en", "de", "fr"] as const;

export type Language = (typeof LANGUAGES)[number];

const WORDS: Readonly<Record<Language, Words>> = { en, de, fr: withEnglish(fr, en) };

export type ByLanguage<T> = Readonly<Record<Language, T>>;

/** A table of every language. */
export function byLanguage<T>(of: (language: Language) => T): ByLanguage<T> {
  return Object.fromEntries(LANGUAGES.map((language) => [language, of(language)])) as ByLanguage<T>;
}

/** A host's own words for every language; English where it has none. */
export function inEveryLanguage<T>(own: { readonly en: T } & Partial<ByLanguage<T>>): ByLanguage<T> {
  return byLanguage((language) => own[language] ?? own.en);
}

const by = <T>(area: (words: Words) => T): ByLanguage<T> => byLanguage((language) => area(WORDS[language]));

/** What each language calls itself; a draft says so. */
export const LANGUAGE_NAMES: ByLanguage<string> = by(({ called, draft }) =>
  draft === null ? called : `${called} (${draft})`,
);
/** Languages that makers have read: what is spoken without being asked for. */
export const READ_LANGUAGES: readonly Language[] = LANGUAGES.filter((language) => WORDS[language].draft === null);
/** What can be wrong with what a person gave us. */
export const SENTENCES: ByLanguage<Sentences> = by((words) => words.problems);
/** Cautions. */
export const CAUTION_TABLES: ByLanguage<CautionTable> = by((words) => words.cautions);
/** Straps. */
export const STRAP_WORDS: ByLanguage<StrapWords> = byLanguage((language) => ({
  ...WORDS[language].straps,
  language,
}));
/** Panels, shapes and bags. */
export const PANEL_WORDS: ByLanguage<PanelWords> = by((words) => words.panels);
/** Ruler cuts. */
export const RULER_TEXTS: ByLanguage<RulerTexts> = by((words) => words.ruler);
/** Drawings and printed sheets. */
export const PAPER_TEXTS: ByLanguage<PaperTexts> = by((words) => words.paper);
/** The cut sheet. */
export const SHEET_TEXTS: ByLanguage<SheetTexts> = by((words) => words.cutSheet);
/** Files for the cutting table. */
export const FILE_TEXTS: ByLanguage<FileTexts> = by((words) => words.files);
/** Shopping lists. */
export const SHOPPING_TEXTS: ByLanguage<ShoppingTexts> = by((words) => words.shopping);

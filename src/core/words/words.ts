import type { CautionTable } from "../materials/caution.ts";
import type { Sentences } from "../problems/problem.ts";
import { LANGUAGES, type Language } from "../units/language.ts";
import { de } from "./de/de.ts";
import { en } from "./en/en.ts";
import type { FileTexts } from "./fileTexts.ts";
import type { Words } from "./oneLanguage.ts";
import type { PanelWords } from "./panelWords.ts";
import type { PaperTexts } from "./paperTexts.ts";
import type { RulerTexts } from "./rulerTexts.ts";
import type { SheetTexts } from "./sheetTexts.ts";
import type { ShoppingTexts } from "./shoppingTexts.ts";
import type { StrapWords } from "./strapWords.ts";

/** Another language is another folder like these two, and its line here. */
const WORDS: Readonly<Record<Language, Words>> = { en, de };

type ByLanguage<T> = Readonly<Record<Language, T>>;
const by = <T>(area: (words: Words) => T): ByLanguage<T> =>
  Object.fromEntries(LANGUAGES.map((language) => [language, area(WORDS[language])])) as ByLanguage<T>;

/** What can be wrong with what a person gave us. */
export const SENTENCES: ByLanguage<Sentences> = by((words) => words.problems);
/** Cautions. */
export const CAUTION_TABLES: ByLanguage<CautionTable> = by((words) => words.cautions);
/** Straps. */
export const STRAP_WORDS: ByLanguage<StrapWords> = by((words) => words.straps);
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

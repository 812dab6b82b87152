import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Language } from "../../core/units/language.ts";
import { de } from "./de.ts";
import { en, type Texts } from "./en.ts";
import { fr } from "./fr.ts";

/** Languages of the page: those of the core, and drafts, whose core words are English. */
export type PageLanguage = Language | "fr";

/** The catalogue of each language. A new language is its file and its lines here. */
export const CATALOGUES: Readonly<Record<PageLanguage, Texts>> = { en, de, fr };

/** How a language calls itself; a draft says so. */
export const LANGUAGE_NAMES: Readonly<Record<PageLanguage, string>> = {
  en: "English",
  de: "Deutsch",
  fr: "Français (brouillon)",
};

/** The language of problems, sheets and files for a language of the page. */
export function coreLanguage(language: PageLanguage): Language {
  return language === "fr" ? "en" : language;
}

/** The catalogue of the page's language. */
export const TextsContext = createContext<Texts>(en);

/** The language that is switched on. */
export const LanguageContext = createContext<Language>("en");

/** The language that is switched on, for words that the core has. */
export function useLanguage(): Language {
  return useContext(LanguageContext);
}

/** Texts of the language that is switched on. */
export function useTexts(): Texts {
  return useContext(TextsContext);
}

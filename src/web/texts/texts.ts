import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Language } from "../../core/units/language.ts";
import type { Texts } from "./catalogue.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";

/** The catalogue of each language. */
export const CATALOGUES: Readonly<Record<Language, Texts>> = { en, de };

/** How a language calls itself. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: "English", de: "Deutsch" };

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

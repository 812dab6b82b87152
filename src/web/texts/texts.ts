import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Language } from "../state/settings.ts";
import type { Texts } from "./catalogue.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";

/** The catalogue of each language. */
export const CATALOGUES: Readonly<Record<Language, Texts>> = { en, de };

/** How a language calls itself. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: "English", de: "Deutsch" };

/** The catalogue of the page's language. */
export const TextsContext = createContext<Texts>(en);

/** Texts of the language that is switched on. */
export function useTexts(): Texts {
  return useContext(TextsContext);
}

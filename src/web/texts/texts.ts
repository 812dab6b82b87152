import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Language } from "../../core/units/language.ts";
import { type Draft, withEnglish } from "../../core/words/oneLanguage.ts";
import type { StrapWords } from "../../core/words/strapWords.ts";
import { type ByLanguage, byLanguage, STRAP_WORDS } from "../../core/words/words.ts";
import { page as english, type PageTexts } from "./en/page.ts";

/** Every word on the page; what constructions are called is the core's. */
export type Texts = PageTexts & Pick<StrapWords, "constructions">;

/** The words of each language's folder here: a language of the core that has none speaks English on the page. */
const FOUND = import.meta.glob<Draft<PageTexts>>("./*/page.ts", { eager: true, import: "page" });

/** The catalogue of each language. */
export const CATALOGUES: ByLanguage<Texts> = byLanguage((language) => ({
  ...withEnglish(FOUND[`./${language}/page.ts`] ?? {}, english),
  constructions: STRAP_WORDS[language].constructions,
}));

/** The catalogue of the page's language. */
export const TextsContext = createContext<Texts>(CATALOGUES.en);

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

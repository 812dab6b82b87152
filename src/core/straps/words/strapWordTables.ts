import type { Language } from "../../units/language.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";
import type { ConstructionWords, StrapWords } from "./strapWords.ts";

/** Words about straps by language. */
export const STRAP_WORDS: Readonly<Record<Language, StrapWords>> = { en: english, de: german };

/** A construction's name with its layer count, so that folds in three and in four cannot be mistaken. */
export function constructionTitle({ name, layers }: ConstructionWords): string {
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} (${layers})`;
}

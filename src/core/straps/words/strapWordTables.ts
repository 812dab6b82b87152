import type { Language } from "../../units/language.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";
import type { StrapWords } from "./strapWords.ts";

/** Words about straps by language. */
export const STRAP_WORDS: Readonly<Record<Language, StrapWords>> = { en: english, de: german };

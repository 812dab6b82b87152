import type { Language } from "../../units/language.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";
import type { PaperTexts } from "./paperTexts.ts";

/** Words of drawings and sheets by language. */
export const PAPER_TEXTS: Readonly<Record<Language, PaperTexts>> = { en: english, de: german };

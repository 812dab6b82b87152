import type { Language } from "../../core/units/language.ts";
import { english } from "./english.ts";
import type { FileTexts } from "./fileTexts.ts";
import { german } from "./german.ts";

/** What is said of files by language. */
export const FILE_TEXTS: Readonly<Record<Language, FileTexts>> = { en: english, de: german };

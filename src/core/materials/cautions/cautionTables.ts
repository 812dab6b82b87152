import type { Language } from "../../units/language.ts";
import type { CautionTable } from "./caution.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";

/** The cautions in each language. */
export const CAUTION_TABLES: Readonly<Record<Language, CautionTable>> = { en: english, de: german };

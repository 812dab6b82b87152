import type { Language } from "../../../core/units/language.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";
import type { SheetTexts } from "./sheetTexts.ts";

/** Words of the cut sheet by language. */
export const SHEET_TEXTS: Readonly<Record<Language, SheetTexts>> = { en: english, de: german };

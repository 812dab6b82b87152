import type { Language } from "../../../units/language.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";
import type { RulerTexts } from "./rulerTexts.ts";

/** Words of ruler cuts by language. */
export const RULER_TEXTS: Readonly<Record<Language, RulerTexts>> = { en: english, de: german };

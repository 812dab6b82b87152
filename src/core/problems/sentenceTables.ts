import type { Language } from "../units/language.ts";
import { english } from "./english/english.ts";
import { german } from "./german/german.ts";
import type { Sentences } from "./sentence.ts";

/** Sentences for problems in each language. */
export const SENTENCES: Readonly<Record<Language, Sentences>> = { en: english, de: german };

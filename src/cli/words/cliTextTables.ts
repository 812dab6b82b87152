import type { Language } from "../../core/units/language.ts";
import type { CliTexts } from "./cliTexts.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";

/** What the commands say by language. */
export const CLI_TEXTS: Readonly<Record<Language, CliTexts>> = { en: english, de: german };

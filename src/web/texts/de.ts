import type { Texts } from "./catalogue.ts";
import { en } from "./en.ts";

/** German texts. */
export const de: Texts = en;

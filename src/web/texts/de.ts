import { en } from "./en.ts";
import type { Texts } from "./texts.ts";

/** German texts. */
export const de: Texts = en;

import type { en } from "./en.ts";

/** Every word on the page. English is the pattern: a language that lacks a text does not compile. */
export type Texts = typeof en;

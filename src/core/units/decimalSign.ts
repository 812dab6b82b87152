import type { Language } from "./language.ts";

/** A text about numbers with the decimal sign of its language: `98.4 mm` is `98,4 mm` in German. */
export function withDecimalSign(text: string, language: Language): string {
  return language === "de" ? text.replace(/(?<=\d)\.(?=\d)/gu, ",") : text;
}

import type { Language } from "./language.ts";

/** A text about numbers with the decimal sign of its language: `12.5 mm` is `12,5 mm` in German. */
export function withDecimalSign(text: string, language: Language): string {
  return language === "de" ? text.replace(/(?<=\d)\.(?=\d)/gu, ",") : text;
}

import type { Language } from "../../units/language.ts";

/** What pieces that follow from a panel are called. */
export interface PanelWords {
  readonly interfacing: string;
  readonly lining: string;
}

export const PANEL_WORDS: Readonly<Record<Language, PanelWords>> = {
  en: { interfacing: "interfacing", lining: "lining" },
  de: { interfacing: "Einlage", lining: "Futter" },
};

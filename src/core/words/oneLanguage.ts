import type { CautionTable } from "../materials/caution.ts";
import type { Sentences } from "../problems/problem.ts";
import type { FileTexts } from "./fileTexts.ts";
import type { PanelWords } from "./panelWords.ts";
import type { PaperTexts } from "./paperTexts.ts";
import type { RulerTexts } from "./rulerTexts.ts";
import type { SheetTexts } from "./sheetTexts.ts";
import type { ShoppingTexts } from "./shoppingTexts.ts";
import type { SpokenStraps } from "./strapWords.ts";

/** Everything the core and the files say in one language; a language that lacks a word does not compile. */
export interface Words {
  /** What the language calls itself. */
  readonly called: string;
  /** Its word for what no maker has read yet; null where one has. */
  readonly draft: string | null;
  readonly problems: Sentences;
  readonly cautions: CautionTable;
  readonly straps: SpokenStraps;
  readonly panels: PanelWords;
  readonly ruler: RulerTexts;
  /** Drawings and printed sheets. */
  readonly paper: PaperTexts;
  readonly cutSheet: SheetTexts;
  /** What each file is for. */
  readonly files: FileTexts;
  readonly shopping: ShoppingTexts;
}

/** Words of a language that is still being translated: any may be missing, lists are whole. */
export type Draft<T> = T extends string | null | readonly unknown[] | ((...facts: never[]) => unknown)
  ? T
  : { readonly [K in keyof T]?: Draft<T[K]> };

/** A language that is still being translated: its own name and its word for a draft are all it must have. */
export type Translation = Draft<Words> & { readonly called: string; readonly draft: string };

/** Every word that English has: the draft's own, and the English one where it has none. */
export function withEnglish<T>(own: Draft<NoInfer<T>>, english: T): T {
  const said = own as Readonly<Record<string, unknown>>;
  const filled = Object.entries(english as object).map(([key, word]: [string, unknown]) => {
    const isGroup = typeof word === "object" && word !== null && !Array.isArray(word);
    return [key, isGroup ? withEnglish(said[key] ?? {}, word) : (said[key] ?? word)] as const;
  });
  return { ...said, ...Object.fromEntries(filled) } as T;
}

import type { Words } from "./oneLanguage.ts";

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

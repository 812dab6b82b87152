import type { Problem } from "./problem.ts";

/** A problem in words: what is wrong, and the next step. Both are whole sentences. */
export interface Sentence {
  readonly what: string;
  readonly remedy: string;
}

/** One row for each code of an area; a missing row does not compile. */
export type SentenceTable<P extends { readonly code: string }> = {
  readonly [C in P["code"]]: (problem: Extract<P, { readonly code: C }>) => Sentence;
};

/** All sentences in one language: the areas' tables put together. */
export type Sentences = SentenceTable<Problem>;

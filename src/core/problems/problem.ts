import type { LengthProblem } from "../units/lengthProblem.ts";
import type { SayLength } from "../units/sayLength.ts";
import type { BatchProblem } from "./batchProblems.ts";
import type { CupboardProblem } from "./cupboardProblems.ts";
import type { FileProblem } from "./fileProblems.ts";
import type { LayProblemFinding } from "./layProblems.ts";
import type { MatchProblem } from "./matchProblems.ts";
import type { PanelProblem } from "./panelProblems.ts";
import type { PatternProblem } from "./patternProblems.ts";
import type { StrapProblem } from "./strapProblems.ts";

/**
 * Anything wrong with what a person gave us, as data: a code, the place it was found, and facts.
 * No prose here; `describeProblem` writes the sentence and the remedy for CLI and web alike.
 * Each area of the house keeps its own codes in one file beside this one.
 */
export type Problem =
  | BatchProblem
  | CupboardProblem
  | FileProblem
  | LengthProblem
  | MatchProblem
  | PanelProblem
  | PatternProblem
  | StrapProblem
  | LayProblemFinding;

/** A value, or every reason why there is none. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Wraps a value as a successful result. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** A failed result; at least one problem. */
export function failed<T>(...problems: readonly Problem[]): Result<T> {
  return { ok: false, problems };
}

/** A problem in words: what is wrong, and the next step. Both are whole sentences. */
export interface Sentence {
  readonly what: string;
  readonly remedy: string;
}

/** One row for each code of an area; a missing row does not compile. `say` writes lengths as the maker reads them. */
export type SentenceTable<P extends { readonly code: string }> = {
  readonly [C in P["code"]]: (problem: Extract<P, { readonly code: C }>, say: SayLength) => Sentence;
};

/** All sentences in one language: the areas' tables put together. */
export type Sentences = SentenceTable<Problem>;

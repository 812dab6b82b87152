import { SENTENCES } from "../words/words.ts";
import type { Problem, Sentence, Sentences } from "./problem.ts";

/** A problem in words, and the place it was found (empty when it concerns the whole). */
export interface ProblemText extends Sentence {
  readonly path: string;
}

/** The sentence and the remedy for a problem, in English unless another language's table is given. Never throws. */
export function describeProblem(problem: Problem, sentences: Sentences = SENTENCES.en): ProblemText {
  // The table is complete by its type: the row for a code takes that code's problem.
  const row = sentences[problem.code] as (of: Problem) => Sentence;
  return { path: problem.path, ...row(problem) };
}

/** A problem on one line: `straps[1].width: The length … Write …`. */
export function problemLine(problem: Problem, sentences: Sentences = SENTENCES.en): string {
  const { path, what, remedy } = describeProblem(problem, sentences);
  return `${path === "" ? "" : `${path}: `}${what} ${remedy}`;
}

import { type SayLength, sayLengths } from "../units/sayLength.ts";
import { LANGUAGES, SENTENCES } from "../words/words.ts";
import type { Problem, Sentence, Sentences } from "./problem.ts";

/** A problem in words, and the place it was found (empty when it concerns the whole). */
export interface ProblemText extends Sentence {
  readonly path: string;
}

/**
 * The sentence and the remedy for a problem, in English unless another language's table is given. `say` writes the
 * lengths in it, in millimetres when left out. Never throws.
 */
export function describeProblem(
  problem: Problem,
  sentences: Sentences = SENTENCES.en,
  say: SayLength = inMillimetres(sentences),
): ProblemText {
  // The table is complete by its type: the row for a code takes that code's problem.
  const row = sentences[problem.code] as (of: Problem, say: SayLength) => Sentence;
  return { path: problem.path, ...row(problem, say) };
}

/** A problem on one line: `straps[1].width: The length … Write …`. */
export function problemLine(
  problem: Problem,
  sentences: Sentences = SENTENCES.en,
  say: SayLength = inMillimetres(sentences),
): string {
  const { path, what, remedy } = describeProblem(problem, sentences, say);
  return `${path === "" ? "" : `${path}: `}${what} ${remedy}`;
}

function inMillimetres(sentences: Sentences): SayLength {
  return sayLengths("mm", LANGUAGES.find((language) => SENTENCES[language] === sentences) ?? "en");
}

import { problemLine } from "../../core/problems/describeProblem.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { sayLengths } from "../../core/units/sayLength.ts";
import { SENTENCES } from "../../core/words/words.ts";
import type { Io } from "../command.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** What the person gave cannot be used: ends a command with exit code 1, every problem told at once. */
export class InputProblem extends Error {
  /** The problems with their sentences in the language of the run. */
  readonly told: (language: Language) => readonly ToldProblem[];

  constructor(told: (language: Language) => readonly ToldProblem[]) {
    super(
      told("en")
        .map((problem) => problem.message)
        .join("\n"),
    );
    this.told = told;
  }
}

/** A problem with its sentence. */
export interface ToldProblem {
  readonly code: string;
  /** Where: a file, or a place in it. */
  readonly path: string;
  readonly message: string;
}

/** Tells the problems: sentences on standard error, and as data on standard output when JSON is wanted. */
export function reportInputProblem(error: InputProblem, json: boolean, io: Io): void {
  const problems = error.told(io.language);
  for (const problem of problems) io.err(`${problem.message}\n`);
  if (json) io.out(`${JSON.stringify({ problems })}\n`);
}

/** An input problem from the core's problem data, its lengths written as `lengths` says. */
export function inputProblem(problems: readonly Problem[], lengths: LengthStyle = "mm"): InputProblem {
  return new InputProblem((language) =>
    problems.map((problem) => ({
      ...problem,
      message: problemLine(problem, SENTENCES[language], sayLengths(lengths, language)),
    })),
  );
}

/** An input problem in a command's own words. */
export function plainProblem(code: string, path: string, say: (texts: CliTexts) => string): InputProblem {
  return new InputProblem((language) => [{ code, path, message: say(CLI_TEXTS[language]) }]);
}

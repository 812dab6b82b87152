import type { Language } from "../../core/units/language.ts";
import type { Io } from "../command.ts";

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

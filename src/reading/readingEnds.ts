import type { PatternProblem } from "../core/problems/patternProblems.ts";

/** Thrown inside a reader to end it with a problem; caught at the door of the readers. */
export class ReadingEnds extends Error {
  readonly problem: PatternProblem;

  constructor(problem: PatternProblem) {
    super(problem.code);
    this.problem = problem;
  }
}

/** Ends a reader because the file is not what it should be. */
export function unreadable(
  reason: Extract<PatternProblem, { code: "pattern-unreadable" }>["reason"],
  line = 0,
): never {
  throw new ReadingEnds({ code: "pattern-unreadable", path: "", reason, line });
}

/** Ends a reader because there is more in a file than a pattern needs. */
export function tooMuch(of: Extract<PatternProblem, { code: "pattern-too-much" }>["of"], limit: number): never {
  throw new ReadingEnds({ code: "pattern-too-much", path: "", of, limit });
}

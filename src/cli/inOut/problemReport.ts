import { problemLine } from "../../core/problems/describeProblem.ts";
import type { Problem } from "../../core/problems/problem.ts";
import { SENTENCES } from "../../core/words/words.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/cliTextTables.ts";
import { InputProblem } from "./toldProblem.ts";

/** An input problem from the core's problem data. */
export function inputProblem(problems: readonly Problem[]): InputProblem {
  return new InputProblem((language) =>
    problems.map((problem) => ({ ...problem, message: problemLine(problem, SENTENCES[language]) })),
  );
}

/** An input problem in a command's own words. */
export function plainProblem(code: string, path: string, say: (texts: CliTexts) => string): InputProblem {
  return new InputProblem((language) => [{ code, path, message: say(CLI_TEXTS[language]) }]);
}

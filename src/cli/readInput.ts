import { readFileSync, statSync } from "node:fs";
import { plainProblem } from "./problemReport.ts";
import { reasonOf } from "./writeFiles.ts";

/** No project or data set comes near this; more is refused before it is read. */
const MOST_BYTES = 64 * 1024 * 1024;

/** The text of a file. Throws `InputProblem` when it is missing, a folder, too large or not UTF-8 text. */
export function readInput(path: string): string {
  try {
    const { size } = statSync(path);
    if (size > MOST_BYTES) throw new Error(`it is larger than ${MOST_BYTES / 1024 / 1024} MB`);
    return new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
  } catch (error) {
    const reason = error instanceof TypeError ? "it is not UTF-8 text" : reasonOf(error);
    throw plainProblem("file-unreadable", path, `${path} cannot be read: ${reason}.`);
  }
}

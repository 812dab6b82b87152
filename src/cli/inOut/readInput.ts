import { existsSync, readFileSync, statSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { withWorkshop } from "../../core/project/file/workshop.ts";
import { InputProblem, inputProblem, plainProblem } from "./toldProblem.ts";
import { fileReason } from "./writeFiles.ts";

/** No project or data set comes near this; more is refused before it is read. */
const MOST_MEGABYTES = 64;

/** The text of a file, its byte order mark left out unless it is to be written back. Throws `InputProblem` when it is missing, a folder, too large or not UTF-8 text. */
export function readInput(path: string, ignoreBOM = false): string {
  return readWith(path, (bytes) => new TextDecoder("utf-8", { fatal: true, ignoreBOM }).decode(bytes));
}

/** The bytes of a file. Throws `InputProblem` when it is missing, a folder or too large. */
export function readInputBytes(path: string): Uint8Array {
  return readWith(path, (bytes) => bytes);
}

function readWith<T>(path: string, take: (bytes: Uint8Array) => T): T {
  try {
    const { size } = statSync(path);
    if (size > MOST_MEGABYTES * 1024 * 1024)
      throw plainProblem("file-unreadable", path, ({ files }) =>
        files.unreadable(path, files.tooLarge(MOST_MEGABYTES)),
      );
    return take(readFileSync(path));
  } catch (error) {
    if (error instanceof InputProblem) throw error;
    throw plainProblem("file-unreadable", path, (texts) => texts.files.unreadable(path, fileReason(error, texts)));
  }
}

/** A project's text with what its workshop gives, a file named from where the project lies. Throws `InputProblem`. */
export function withItsWorkshop(text: string, projectFile: string): string {
  const read = withWorkshop(text, (name) => {
    const path = resolve(dirname(projectFile), name);
    return existsSync(path) ? readInput(path) : null;
  });
  if (!read.ok) throw inputProblem(read.problems);
  return read.value;
}

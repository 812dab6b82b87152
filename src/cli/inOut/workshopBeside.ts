import { existsSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { withWorkshop } from "../../core/project/file/workshop.ts";
import { readInput } from "./readInput.ts";
import { inputProblem } from "./toldProblem.ts";

/** A project's text with what its workshop gives, a file named from where the project lies. Throws `InputProblem`. */
export function withItsWorkshop(text: string, projectFile: string): string {
  const read = withWorkshop(text, (name) => {
    const path = resolve(dirname(projectFile), name);
    return existsSync(path) ? readInput(path) : null;
  });
  if (!read.ok) throw inputProblem(read.problems);
  return read.value;
}

import { basename, dirname } from "node:path";
import { editedText, type FileEdit } from "../../core/project/file/editedText.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import { inputProblem } from "./problemReport.ts";
import { readInput } from "./readInput.ts";
import { writeFiles } from "./writeFiles.ts";

/**
 * Changes a project file in place: every byte that the edits do not concern stays, and the file is written whole or
 * not at all. Throws `InputProblem` when the file is no project, before or after.
 */
export function editProjectFile(file: string, edits: (project: Project) => readonly FileEdit[]): void {
  const text = readInput(file, true);
  const project = readProject(text);
  if (!project.ok) throw inputProblem(project.problems);
  const edited = editedText(text, edits(project.value));
  const after = readProject(edited);
  if (!after.ok) throw inputProblem(after.problems);
  writeFiles(dirname(file), [{ name: basename(file), data: edited }]);
}

import { basename, dirname } from "node:path";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import { readJob } from "../../core/job/projectJob.ts";
import { editedText, type FileEdit } from "../../core/project/file/editedText.ts";
import { lengthsOfText } from "../../core/project/file/lengthsOfText.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import { readInput, withItsWorkshop } from "./readInput.ts";
import { inputProblem } from "./toldProblem.ts";
import { writeFiles } from "./writeFiles.ts";

/**
 * Changes a project file in place: every byte that the edits do not concern stays, and the file is written whole or
 * not at all. Throws `InputProblem` when the file is no project, before or after.
 */
export function editProjectFile(file: string, edits: (project: Project) => readonly FileEdit[]): void {
  const text = readInput(file, true);
  const project = readProject(withItsWorkshop(text, file));
  if (!project.ok) throw inputProblem(project.problems, lengthsOfText(text));
  const edited = editedText(text, edits(project.value));
  const after = readProject(withItsWorkshop(edited, file));
  if (!after.ok) throw inputProblem(after.problems, project.value.output.lengths);
  writeFiles(dirname(file), [{ name: basename(file), data: edited }]);
}

/**
 * Reads a project from its text and works it out as far as the pieces to lay, the parts of straps named in `language`.
 * Throws `InputProblem` with everything that is wrong with it.
 */
export function readProjectFile(text: string, language: Language = "en"): ProjectJob {
  const job = readJob(text, language);
  if (!job.ok) throw inputProblem(job.problems, lengthsOfText(text));
  return job.value;
}

import { layProblemsOf } from "../../core/job/layProblems.ts";
import { pinFaults } from "../../core/job/pinFaults.ts";
import type { LayProblem } from "../../core/lay/problem/layProblem.ts";
import { type CutList, cutListOf } from "../../core/project/cutList.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import { inputProblem } from "./problemReport.ts";

/** A project file, worked out as far as the pieces to lay. */
export interface ReadProject {
  readonly project: Project;
  readonly cutList: CutList;
  readonly problems: readonly LayProblem[];
}

/** Reads a project from its text, the parts of straps named in `language`. Throws `InputProblem` with everything that is wrong with it. */
export function readProjectFile(text: string, language: Language = "en"): ReadProject {
  const project = readProject(text);
  if (!project.ok) throw inputProblem(project.problems);
  const cutList = cutListOf(project.value, language);
  if (!cutList.ok) throw inputProblem(cutList.problems);
  const problems = layProblemsOf(project.value, cutList.value);
  const faults = problems.flatMap((problem) => pinFaults(project.value, problem));
  if (faults.length > 0) throw inputProblem(faults);
  return { project: project.value, cutList: cutList.value, problems };
}

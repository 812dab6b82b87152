import { pinFaults } from "../../core/job/pinFaults.ts";
import { jobOf, type ProjectJob } from "../../core/job/projectJob.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Language } from "../../core/units/language.ts";
import { inputProblem } from "./problemReport.ts";

/**
 * Reads a project from its text and works it out as far as the pieces to lay, the parts of straps named in `language`.
 * Throws `InputProblem` with everything that is wrong with it.
 */
export function readProjectFile(text: string, language: Language = "en"): ProjectJob {
  const project = readProject(text);
  if (!project.ok) throw inputProblem(project.problems);
  const job = jobOf(project.value, language);
  if (job.troubles.length > 0) throw inputProblem(job.troubles);
  const faults = job.lays.flatMap(({ problem }) => pinFaults(project.value, problem));
  if (faults.length > 0) throw inputProblem(faults);
  return job;
}

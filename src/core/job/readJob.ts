import type { Problem, Result } from "../problems/problem.ts";
import { readProject } from "../project/file/readProject.ts";
import type { Language } from "../units/language.ts";
import { pinFaults } from "./pinFaults.ts";
import { jobOf, type ProjectJob } from "./projectJob.ts";

/**
 * A project worked out from the text of its file as far as the pieces to lay, or everything that is wrong with it.
 * Never throws, whatever the text; parts of straps are named in `language`.
 */
export function readJob(text: string, language: Language = "en"): Result<ProjectJob> {
  const project = readProject(text);
  if (!project.ok) return project;
  const job = jobOf(project.value, language);
  const problems: readonly Problem[] =
    job.troubles.length > 0 ? job.troubles : job.lays.flatMap(({ problem }) => pinFaults(project.value, problem));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: job };
}

import { jobOf, type ProjectJob } from "../../core/job/projectJob.ts";
import { strapMaterial } from "../../core/project/cutList.ts";
import type { Project } from "../../core/project/project.ts";
import type { StrapMaterial } from "../../core/straps/wish/strapWish.ts";
import type { Language } from "../../core/units/language.ts";

const known: Readonly<Record<Language, WeakMap<Project, ProjectJob>>> = { en: new WeakMap(), de: new WeakMap() };

/** Worked out once for each state of the project; parts are named in `language`. */
export function derivedOf(project: Project, language: Language): ProjectJob {
  let derived = known[language].get(project);
  if (derived === undefined) {
    derived = jobOf(project, language);
    known[language].set(project, derived);
  }
  return derived;
}

/** The project's materials as the strap builder wants them. */
export function materialsOfStraps(project: Project): readonly StrapMaterial[] {
  return project.materials.map(strapMaterial);
}

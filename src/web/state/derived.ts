import { namedProblem } from "../../core/drawing/lay/namedProblem.ts";
import { jobOf, type ProjectJob } from "../../core/job/projectJob.ts";
import type { Problem } from "../../core/problems/problem.ts";
import { strapMaterial } from "../../core/project/cutList.ts";
import type { Project } from "../../core/project/project.ts";
import type { StrapMaterial } from "../../core/straps/wish/strapWish.ts";
import type { Language } from "../../core/units/language.ts";
import { useLanguage } from "../texts/texts.ts";
import { useProject } from "./workbench.ts";

/** States of a project that stay worked out: the one that is shown, and those that undo and redo are likely to bring. */
const MOST_KNOWN = 4;
let known: readonly { readonly language: Language; readonly derived: ProjectJob }[] = [];

/**
 * Worked out once for each state of the project; parts are named in `language`. Only the last few are remembered: the
 * undo steps of a day would hold the outlines of a day.
 */
export function derivedOf(project: Project, language: Language): ProjectJob {
  const own = known.find((each) => each.derived.project === project && each.language === language);
  if (own !== undefined) return own.derived;
  const derived = jobOf(project, language);
  known = [{ language, derived }, ...known].slice(0, MOST_KNOWN);
  return derived;
}

/** The project's materials as the strap builder wants them. */
export function materialsOfStraps(project: Project): readonly StrapMaterial[] {
  return project.materials.map(strapMaterial);
}

/** What the open project comes to, its parts named in the language of the page. */
export function useDerived(): ProjectJob {
  return derivedOf(useProject(), useLanguage());
}

/** Gives the function that puts the maker's own names into a problem: ids are nothing that she has ever seen. */
export function useNamed(): (problem: Problem) => Problem {
  const project = useProject();
  const language = useLanguage();
  const { pieces } = derivedOf(project, language);
  return (problem) => namedProblem(problem, project, pieces, language);
}

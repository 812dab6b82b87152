import { namedProblem } from "../../core/drawing/lay/namedProblem.ts";
import type { Problem } from "../../core/problems/problem.ts";
import { useLanguage } from "../texts/texts.ts";
import { derivedOf } from "./derived.ts";
import { useProject } from "./workbench.ts";

/** Gives the function that puts the maker's own names into a problem: ids are nothing that she has ever seen. */
export function useNamed(): (problem: Problem) => Problem {
  const project = useProject();
  const language = useLanguage();
  const { pieces } = derivedOf(project, language);
  return (problem) => namedProblem(problem, project, pieces, language);
}

import { pieceArt } from "../../core/drawing/lay/pieceArt.ts";
import { stockName } from "../../core/drawing/lay/stockName.ts";
import type { CopyName } from "../../core/problems/layProblems.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Project } from "../../core/project/project.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import type { Language } from "../../core/units/language.ts";
import { useLanguage } from "../texts/texts.ts";
import { derivedOf } from "./derived.ts";
import { useProject } from "./workbench.ts";

/** Gives the function that puts the maker's own names into a problem: ids are nothing that she has ever seen. */
export function useNamed(): (problem: Problem) => Problem {
  const project = useProject();
  const language = useLanguage();
  return (problem) => named(problem, project, language);
}

/** A problem with names of pieces, stocks and materials in place of ids. */
function named(problem: Problem, project: Project, language: Language): Problem {
  if ("materialId" in problem) {
    const material = project.materials.find(({ id }) => id === problem.materialId);
    return material === undefined ? problem : { ...problem, materialId: material.name };
  }
  if (!("pieceId" in problem)) return problem;
  const { lengths } = project.output;
  const art = pieceArt(derivedOf(project, language).pieces, lengths, language);
  const nameOf = ({ pieceId, copy }: CopyName): { name?: string } => {
    const piece = art.get(pieceId);
    if (piece === undefined) return {};
    return { name: piece.count > 1 ? `${piece.name} ${copy + 1}` : piece.name };
  };
  // A finding about a kind of piece is told by its name alone.
  if (!("copy" in problem)) return { ...problem, pieceId: art.get(problem.pieceId)?.name ?? problem.pieceId };
  const other = "other" in problem ? { other: { ...problem.other, ...nameOf(problem.other) } } : {};
  return { ...problem, ...nameOf(problem), ...other, ...stockOf(problem, project, language) } as Problem;
}

function stockOf(problem: Problem, { materials, output }: Project, language: Language): { stockName?: string } {
  if (!("stockId" in problem)) return {};
  const { stockId } = problem;
  const write = (mm: number) => cutLength(mm, output.lengths, language);
  for (const { stock } of materials) {
    const name = stockName(stock, stockId, write, language);
    if (name !== stockId) return { stockName: name };
  }
  return {};
}

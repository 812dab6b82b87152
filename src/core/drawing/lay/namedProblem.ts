import type { CutPiece } from "../../materials/cutPiece.ts";
import type { CopyName } from "../../problems/layProblems.ts";
import type { Problem } from "../../problems/problem.ts";
import type { Project } from "../../project/project.ts";
import { cutLength } from "../../units/cutLength.ts";
import type { Language } from "../../units/language.ts";
import { pieceArt } from "./pieceArt.ts";
import { stockName } from "./stockName.ts";

/** A problem with the names of pieces, stocks and materials that the maker gave, in place of ids. */
export function namedProblem(
  problem: Problem,
  project: Project,
  pieces: readonly CutPiece[],
  language: Language,
): Problem {
  if ("materialId" in problem) {
    const material = project.materials.find(({ id }) => id === problem.materialId);
    return material === undefined ? problem : { ...problem, materialId: material.name };
  }
  if (!("pieceId" in problem)) return problem;
  const { lengths } = project.output;
  const art = pieceArt(pieces, lengths, language);
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

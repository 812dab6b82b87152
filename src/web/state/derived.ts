import type { CutPiece } from "../../core/materials/cutPiece.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Project } from "../../core/project/project.ts";

/** The cut list of a project; empty while something stands in its way. Worked out once for each state. */
export function piecesOf(_project: Project): readonly CutPiece[] {
  return [];
}

/** What stands in the way of the cut list. */
export function troublesOf(_project: Project): readonly Problem[] {
  return [];
}

import { basename, dirname } from "node:path";
import { nearestWord } from "../../core/problems/nearestWord.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import { writeProject } from "../../core/project/file/writeProject.ts";
import { inputProblem, plainProblem } from "../inOut/problemReport.ts";
import { readInput } from "../inOut/readInput.ts";
import { writeFiles } from "../inOut/writeFiles.ts";

/** What a fold test found out about a material; thickness in mm. */
export interface FoldFindings {
  readonly thickness: number;
  readonly neutral: number;
  readonly clearance: number;
}

/** Two decimals are more than any ruler gives. */
function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}

/**
 * Puts a fold test's findings into a material of a project file, which is written whole or not at all.
 * Throws `InputProblem` when the file is no project or has no such material.
 */
export function storeFold(file: string, materialId: string, found: FoldFindings): void {
  const project = readProject(readInput(file));
  if (!project.ok) throw inputProblem(project.problems);
  const { materials } = project.value;
  if (!materials.some((one) => one.id === materialId)) {
    const ids = materials.map((one) => one.id);
    const nearest = nearestWord(materialId, ids);
    throw plainProblem("material-unknown", file, ({ files }) =>
      files.noMaterial(file, materialId, nearest, ids.join(", ")),
    );
  }
  const fold = { neutral: rounded(found.neutral), clearance: rounded(found.clearance) };
  const changed = materials.map((one) =>
    one.id === materialId ? { ...one, thickness: found.thickness, fold: { ...one.fold, ...fold } } : one,
  );
  writeFiles(dirname(file), [
    { name: basename(file), data: writeProject({ ...project.value, materials: changed }) },
  ]);
}

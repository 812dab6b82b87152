import { nearestWord } from "../../core/problems/nearestWord.ts";
import { writeLength } from "../../core/units/formatLength.ts";
import { editProjectFile } from "../inOut/editProjectFile.ts";
import { plainProblem } from "../inOut/problemReport.ts";

/** What a fold test found out about a material; thickness in mm. */
export interface FoldFindings {
  readonly thickness: number;
  readonly neutral: number;
  readonly clearance: number;
}

/** A thickness that reads the same on any gauge is left as the maker wrote it, mm. */
const SAME_THICKNESS = 0.005;

/** Two decimals are more than any ruler gives. */
function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}

/**
 * Puts a fold test's findings into a material of a project file, and changes nothing else in it.
 * Throws `InputProblem` when the file is no project or has no such material.
 */
export function storeFold(file: string, materialId: string, found: FoldFindings): void {
  editProjectFile(file, ({ materials }) => {
    const index = materials.findIndex(({ id }) => id === materialId);
    if (index < 0) {
      const ids = materials.map((one) => one.id);
      const nearest = nearestWord(materialId, ids);
      throw plainProblem("material-unknown", file, ({ files }) =>
        files.noMaterial(file, materialId, nearest, ids.join(", ")),
      );
    }
    const at = ["materials", index];
    const measured = Math.abs(materials[index]!.thickness - found.thickness) > SAME_THICKNESS;
    return [
      ...(measured ? [{ path: [...at, "thickness"], value: writeLength(found.thickness, "mm") }] : []),
      { path: [...at, "fold", "neutral"], value: rounded(found.neutral) },
      { path: [...at, "fold", "clearance"], value: rounded(found.clearance) },
    ];
  });
}

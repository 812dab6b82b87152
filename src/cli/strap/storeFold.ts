import type { FoldTraits } from "../../core/materials/material.ts";
import { nearestWord } from "../../core/problems/nearestWord.ts";
import type { FoldTestReading } from "../../core/straps/foldTest.ts";
import { writeLength } from "../../core/units/formatLength.ts";
import { editProjectFile } from "../inOut/editProjectFile.ts";
import { plainProblem } from "../inOut/toldProblem.ts";

/** A thickness that reads the same on any gauge is left as the maker wrote it, mm. */
const SAME_THICKNESS = 0.005;

/** A reading as it stands in a project file. */
export function readingText({ construction, ...lengths }: FoldTestReading): Readonly<Record<string, string>> {
  const written = Object.entries(lengths).map(([name, mm]) => [name, writeLength(mm, "mm")] as const);
  return { construction, ...Object.fromEntries(written) };
}

/**
 * Adds a fold test to a material of a project file, and changes nothing else in it but the thickness it measured.
 * Returns the material's traits with it. Throws `InputProblem` when the file is no project or has no such material.
 */
export function storeFold(file: string, materialId: string, reading: FoldTestReading): FoldTraits {
  let traits: FoldTraits = {};
  editProjectFile(file, ({ materials }) => {
    const index = materials.findIndex(({ id }) => id === materialId);
    const material = materials[index];
    if (material === undefined) {
      const ids = materials.map((one) => one.id);
      const nearest = nearestWord(materialId, ids);
      throw plainProblem("material-unknown", file, ({ files }) =>
        files.noMaterial(file, materialId, nearest, ids.join(", ")),
      );
    }
    const before = material.fold.tests ?? [];
    traits = { ...material.fold, tests: [...before, reading] };
    const tests = ["materials", index, "fold", "tests"];
    const test = readingText(reading);
    const measured = Math.abs(material.thickness - reading.thickness) > SAME_THICKNESS;
    return [
      ...(measured
        ? [{ path: ["materials", index, "thickness"], value: writeLength(reading.thickness, "mm") }]
        : []),
      before.length === 0 ? { path: tests, value: [test] } : { path: [...tests, before.length], value: test },
    ];
  });
  return traits;
}

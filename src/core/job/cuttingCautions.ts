import { type Caution, mergedCautions } from "../materials/cautions/caution.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import { laserUnsafe } from "../materials/laser.ts";
import type { Material } from "../materials/material.ts";

/** Layers under the needle that are thick for a home machine, mm (common practice, no source). */
const THICK_STACK = 4;

/** The usual cautions for what is cut, pressed and sewn here and those that `given` adds, each once. */
export function cuttingCautions(
  materials: readonly Material[],
  pieces: readonly CutPiece[],
  given: readonly Caution[] = [],
): readonly Caution[] {
  // A strap on its own does not know its coating; the materials here do.
  const others = given.filter(({ code }) => code !== "laser-pvc");
  return mergedCautions([...usualCautions(materials, pieces), ...others]);
}

function usualCautions(materials: readonly Material[], pieces: readonly CutPiece[]): Caution[] {
  const list: Caution[] = [{ code: "rotary-cutter" }, { code: "local-rules" }];
  if (materials.some((material) => material.kind === "vinyl" || material.coating !== "none"))
    list.push({ code: "iron-melts" });
  const unsafe = materials.filter(laserUnsafe);
  if (unsafe.length > 0) list.push({ code: "laser-pvc", materials: unsafe.map(({ name }) => name) });
  if (materials.some((material) => 4 * material.thickness >= THICK_STACK)) list.push({ code: "thick-stack" });
  if (materials.some((material) => ["vinyl", "leather", "cork"].includes(material.kind)))
    list.push({ code: "solvents" });
  if (pieces.some((piece) => piece.kind === "strip"))
    list.push({ code: "not-load-rated" }, { code: "small-children" });
  return list;
}

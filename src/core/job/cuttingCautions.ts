import { type Caution, mergedCautions, THICK_STACK } from "../materials/caution.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import { laserRisk } from "../materials/laser.ts";
import type { Material, MaterialKind } from "../materials/material.ts";
import type { MachineSettings } from "../project/outputSettings.ts";

/** What is cut and skived with a knife, glued and painted at its edges. */
const KNIFE_KINDS: readonly MaterialKind[] = ["vinyl", "leather", "cork"];

/** The usual cautions for what is cut, pressed and sewn here and those that `given` adds, each once. */
export function cuttingCautions(
  materials: readonly Material[],
  pieces: readonly CutPiece[],
  given: readonly Caution[] = [],
  tool: MachineSettings["tool"] | null = null,
): readonly Caution[] {
  // A strap on its own does not know its coating; the materials here do.
  const others = given.filter(({ code }) => code !== "laser-pvc");
  return mergedCautions([...machineCautions(tool), ...usualCautions(materials, pieces), ...others]);
}

/** What to mind about a machine that cuts with this tool. */
export function machineCautions(tool: MachineSettings["tool"] | null): readonly Caution[] {
  if (tool === null) return [];
  return [{ code: tool === "laser" ? "laser-fumes" : "cutting-machine" }];
}

function usualCautions(materials: readonly Material[], pieces: readonly CutPiece[]): Caution[] {
  const list: Caution[] = [{ code: "rotary-cutter" }, { code: "local-rules" }];
  if (materials.some((material) => material.kind === "vinyl" || material.coating !== "none"))
    list.push({ code: "iron-melts" });
  // Fusible is pressed on with a hot iron, whatever it is pressed on.
  if (materials.some(({ kind }) => kind === "interfacing")) list.push({ code: "hot-iron" });
  if (materials.some(({ kind }) => KNIFE_KINDS.includes(kind))) list.push({ code: "sharp-blades" });
  const unsafe = materials.filter((material) => laserRisk(material) !== null);
  if (unsafe.length > 0) list.push({ code: "laser-pvc", materials: unsafe.map(({ name }) => name) });
  if (materials.some((material) => 4 * material.thickness >= THICK_STACK)) list.push({ code: "thick-stack" });
  if (materials.some((material) => KNIFE_KINDS.includes(material.kind))) list.push({ code: "solvents" });
  if (pieces.some((piece) => piece.kind === "strip"))
    list.push({ code: "not-load-rated" }, { code: "small-children" });
  return list;
}

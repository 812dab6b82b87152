import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { laserUnsafe } from "../../core/materials/laser.ts";
import type { Material } from "../../core/materials/material.ts";

/** Layers under the needle that are thick for a home machine, mm (common practice, no source). */
const THICK_STACK = 4;

/** A caution, and what shows that it has been given already in other words. */
type Caution = readonly [text: string, said: RegExp | null];

/**
 * The usual cautions for what is cut, pressed and sewn here, less those that `given` has in its own words. Common
 * practice, no source, but for hydrogen chloride from heated PVC: Energy & Fuels 17(4), 896–900 (2003).
 */
export function cuttingCautions(
  materials: readonly Material[],
  pieces: readonly CutPiece[],
  given: readonly string[] = [],
): string[] {
  const list = usualCautions(materials, pieces);
  return list
    .filter(([, said]) => said === null || !given.some((caution) => said.test(caution)))
    .map(([text]) => text);
}

function usualCautions(materials: readonly Material[], pieces: readonly CutPiece[]): Caution[] {
  const list: Caution[] = [
    [
      "Rotary cutter: close the blade after every cut, change a blunt blade, keep fingers off the ruler's edge, wear shoes.",
      /rotary cutter/iu,
    ],
  ];
  if (materials.some((material) => material.kind === "vinyl" || material.coating !== "none")) {
    list.push([
      "Coated cloth and vinyl melt under an iron: press from the back through a cloth, low heat, no steam, and try a scrap first.",
      /\biron\b/iu,
    ]);
  }
  const unsafe = materials.filter(laserUnsafe);
  if (unsafe.length > 0) {
    list.push([
      `Never cut ${unsafe.map((material) => material.name).join(", ")} with a laser: PVC gives off hydrogen chloride. Cloth of unknown coating counts as PVC until its supplier names the polymer.`,
      null,
    ]);
  }
  if (materials.some((material) => 4 * material.thickness >= THICK_STACK)) {
    list.push([
      "Thick stacks bend and break needles: sew slowly, turn the wheel by hand over the thickest part, protect your eyes.",
      /thick stacks/iu,
    ]);
  }
  if (materials.some((material) => ["vinyl", "leather", "cork"].includes(material.kind))) {
    list.push([
      "Solvents and contact cements: open windows, gloves, closed tins, no flame, iron or heater near; test on the coating first.",
      /solvent/iu,
    ]);
  }
  if (pieces.some((piece) => piece.kind === "strip")) {
    list.push([
      "Straps are not load rated. Never use them to lift, or to hold animals or people. Keep long straps and cords away from small children.",
      /load rated/iu,
    ]);
  }
  list.push(["Local rules and the makers' own instructions for tools and materials come first.", null]);
  return list;
}

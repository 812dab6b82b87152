import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { laserUnsafe } from "../../core/materials/laser.ts";
import type { Material } from "../../core/materials/material.ts";

/** Layers under the needle that are thick for a home machine, mm (common practice, no source). */
const THICK_STACK = 4;

/**
 * The usual cautions for what is cut, pressed and sewn here. Common practice, no source, but for hydrogen chloride
 * from heated PVC: Energy & Fuels 17(4), 896–900 (2003).
 */
export function cuttingCautions(materials: readonly Material[], pieces: readonly CutPiece[]): string[] {
  const list = [
    "Rotary cutter: close the blade after every cut, change a blunt blade, keep fingers off the ruler's edge, wear shoes.",
  ];
  const plastic = materials.filter((material) => material.kind === "vinyl" || material.coating !== "none");
  if (plastic.length > 0) {
    list.push(
      "Coated cloth and vinyl melt under an iron: press from the back through a cloth, low heat, no steam, and try a scrap first.",
    );
  }
  const unsafe = materials.filter(laserUnsafe);
  if (unsafe.length > 0) {
    list.push(
      `Never cut ${unsafe.map((material) => material.name).join(", ")} with a laser: PVC gives off hydrogen chloride. Cloth of unknown coating counts as PVC until its supplier names the polymer.`,
    );
  }
  if (materials.some((material) => 4 * material.thickness >= THICK_STACK)) {
    list.push(
      "Thick stacks bend and break needles: sew slowly, turn the wheel by hand over the thickest part, protect your eyes.",
    );
  }
  if (materials.some((material) => ["vinyl", "leather", "cork"].includes(material.kind))) {
    list.push(
      "Solvents and contact cements: open windows, gloves, closed tins, no flame, iron or heater near; test on the coating first.",
    );
  }
  if (pieces.some((piece) => piece.kind === "strip")) {
    list.push(
      "Straps are not load rated. Never use them to lift, or to hold animals or people. Keep long straps and cords away from small children.",
    );
  }
  list.push("Local rules and the makers' own instructions for tools and materials come first.");
  return list;
}

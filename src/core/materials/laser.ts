import type { Material } from "./material.ts";

/**
 * True when a laser must not touch the material: PVC, vinyl, or a coating nobody has named.
 * Source: heated PVC gives off hydrogen chloride, Energy & Fuels 17(4), 896–900 (2003); unknown faux leather is
 * treated as PVC until its supplier names the polymer (common practice, no source).
 */
export function laserUnsafe(material: Material): boolean {
  if (material.coating === "pvc" || material.coating === "unknown") return true;
  return material.kind === "vinyl" && material.coating !== "pu";
}

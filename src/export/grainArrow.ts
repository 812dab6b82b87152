import type { GrainArrow } from "../core/drawing/lay/layDrawing.ts";
import type { Material } from "../core/materials/material.ts";

/** One head when the cloth is one-way, none when its direction does not matter. */
export function grainArrow(material: Material): GrainArrow {
  if (material.oneWay) return "one-way";
  return material.grain === "free" ? "none" : "both";
}

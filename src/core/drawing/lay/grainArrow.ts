import type { Material } from "../../materials/material.ts";
import type { GrainArrow } from "./layDrawing.ts";

/** One head when the cloth is one-way, none when its direction does not matter. */
export function grainArrow(material: Material): GrainArrow {
  if (material.oneWay) return "one-way";
  return material.grain === "free" ? "none" : "both";
}

import type { Material } from "../../src/core/materials/material.ts";

/** A woven cloth that keeps its size, with no stock and no price unless said. */
export function sampleMaterial(id: string, more: Partial<Material> = {}): Material {
  return {
    id,
    name: `Cloth ${id}`,
    kind: "woven",
    thickness: 0.5,
    backing: "none",
    coating: "none",
    polymer: "none",
    grain: "either",
    oneWay: false,
    facesAlike: false,
    fold: {},
    shrinkage: { lengthwise: 0, crosswise: 0, when: "before-cutting" },
    repeat: null,
    price: null,
    gap: null,
    margin: null,
    stock: [],
    ...more,
  };
}

import type { Material } from "../../../core/materials/material.ts";

/** How the sentences about a material change it. */
export type SetMaterial = (part: Partial<Material>, label: string, key?: string) => void;

/** What the sentences about a material share. */
export interface MaterialBlanks {
  readonly material: Material;
  readonly path: (field: string) => string;
  readonly set: SetMaterial;
}

import type { Material } from "../../materials/material.ts";

/** What the strap builder needs to know of one material; the project's materials carry all of it. mm. */
export interface StrapMaterial extends Pick<Material, "id" | "name" | "kind" | "thickness" | "backing" | "fold"> {
  /** Usable width of what is in stock; lets the builder say metres. Unknown when absent. */
  readonly usableWidth?: number | undefined;
  /** Longest straight piece that can be had along the roll; open when absent. */
  readonly longestPiece?: number | undefined;
}

import { MM_PER_UNIT } from "../units/lengthWords.ts";
import type { MaterialKind } from "./material.ts";

/** What a material usually is, to be replaced by a measurement. mm. */
interface UsualMaterial {
  readonly kind: MaterialKind;
  readonly thickness: number;
  /** Thinnest and thickest that goes by the name. */
  readonly range: readonly [least: number, most: number];
  /** How far the thickness can be trusted; none is measured. */
  readonly from: "memory" | "common practice";
}

/** One ounce of leather is 1/64 in of thickness (common practice, no source). */
const LEATHER_OUNCE = MM_PER_UNIT.in / 64;

/** Materials to start from, as the command line and `docs/reference/materials.md` name them. */
export const USUAL_NAMES = [
  "cotton",
  "lining",
  "canvas",
  "canvas-10oz",
  "canvas-12oz",
  "denim",
  "waxed-canvas",
  "wool-tweed",
  "woven",
  "vinyl",
  "faux-leather",
  "marine-vinyl",
  "cork",
  "leather",
  "leather-3oz",
  "leather-5oz",
  "felt",
  "interfacing",
  "padding",
  "fusible-fleece",
  "foam",
  "webbing",
  "cord",
] as const;

export type UsualMaterialName = (typeof USUAL_NAMES)[number];

/** What each of them is. */
export const USUAL_MATERIALS: Readonly<Record<UsualMaterialName, UsualMaterial>> = {
  cotton: { kind: "woven", thickness: 0.3, range: [0.25, 0.35], from: "memory" },
  lining: { kind: "woven", thickness: 0.2, range: [0.1, 0.3], from: "memory" },
  canvas: { kind: "woven", thickness: 0.7, range: [0.55, 0.8], from: "memory" },
  "canvas-10oz": { kind: "woven", thickness: 0.6, range: [0.55, 0.65], from: "memory" },
  "canvas-12oz": { kind: "woven", thickness: 0.72, range: [0.65, 0.8], from: "memory" },
  denim: { kind: "woven", thickness: 0.85, range: [0.7, 1], from: "memory" },
  "waxed-canvas": { kind: "woven", thickness: 0.7, range: [0.5, 0.9], from: "memory" },
  "wool-tweed": { kind: "woven", thickness: 1.2, range: [1, 2], from: "memory" },
  woven: { kind: "woven", thickness: 0.3, range: [0.1, 2], from: "memory" },
  vinyl: { kind: "vinyl", thickness: 0.9, range: [0.7, 1.3], from: "common practice" },
  "faux-leather": { kind: "vinyl", thickness: 0.9, range: [0.7, 1.3], from: "common practice" },
  "marine-vinyl": { kind: "vinyl", thickness: 1.05, range: [0.9, 1.2], from: "memory" },
  cork: { kind: "cork", thickness: 0.65, range: [0.5, 0.8], from: "memory" },
  leather: { kind: "leather", thickness: 4 * LEATHER_OUNCE, range: [1.1, 2.1], from: "common practice" },
  "leather-3oz": { kind: "leather", thickness: 3 * LEATHER_OUNCE, range: [1.1, 1.3], from: "common practice" },
  "leather-5oz": { kind: "leather", thickness: 5 * LEATHER_OUNCE, range: [1.9, 2.1], from: "common practice" },
  felt: { kind: "felt", thickness: 3, range: [1, 5], from: "memory" },
  interfacing: { kind: "interfacing", thickness: 0.2, range: [0.15, 0.25], from: "memory" },
  padding: { kind: "padding", thickness: 3, range: [2, 6], from: "memory" },
  "fusible-fleece": { kind: "padding", thickness: 1.2, range: [0.8, 1.6], from: "memory" },
  foam: { kind: "padding", thickness: 1.8, range: [1.2, 2.5], from: "memory" },
  webbing: { kind: "webbing", thickness: 2, range: [1.5, 2.5], from: "common practice" },
  cord: { kind: "cord", thickness: 8, range: [3, 15], from: "memory" },
};

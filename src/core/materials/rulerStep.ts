import type { LengthStyle } from "../units/formatLength.ts";
import type { MaterialKind } from "./material.ts";

/** Divisions of an inch rule that mean something on a material. */
export type InchStep = Extract<LengthStyle, "in/16" | "in/32">;

const SOFT: ReadonlySet<MaterialKind> = new Set(["woven", "felt", "interfacing", "padding"]);

/** Cloth moves under the ruler by more than a thirty-second: sixteenths for it, thirty-seconds for what lies still (from memory). */
export function inchStepOf(kind: MaterialKind): InchStep {
  return SOFT.has(kind) ? "in/16" : "in/32";
}

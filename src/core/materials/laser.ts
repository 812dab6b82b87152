import type { Coating, Material, MaterialKind, Polymer } from "./material.ts";

/** Why a laser must not touch a material: it is PVC, or nobody has named its coating, or what it is made of. */
export type LaserRisk = "pvc" | "unknown-coating" | "unknown-polymer";

/** Kinds that may be plastic all through, or hold a glue that melts: foam, synthetic felt, fusible, webbing, cord. */
const PLASTIC_KINDS: readonly MaterialKind[] = ["felt", "interfacing", "padding", "webbing", "cord"];

/** Whether it has to be asked what a kind is made of before a laser touches it. */
export const mayBePlastic = (kind: MaterialKind): boolean => PLASTIC_KINDS.includes(kind);

/** What counts as a kind's coating and polymer until somebody states them: what may be plastic is not called harmless. */
export function unstated(kind: MaterialKind): { readonly coating: Coating; readonly polymer: Polymer } {
  return { coating: kind === "vinyl" ? "unknown" : "none", polymer: mayBePlastic(kind) ? "unknown" : "none" };
}

/**
 * Why a laser gets no file of the material; null when it may be cut. What nobody has named counts as PVC until its
 * supplier names the polymer.
 * Source: heated PVC gives off hydrogen chloride, Energy & Fuels 17(4), 896–900 (2003); the unnamed as PVC: common
 * practice, no source.
 */
export function laserRisk({ kind, coating, polymer }: Material): LaserRisk | null {
  if (coating === "pvc" || polymer === "pvc") return "pvc";
  if (coating === "unknown") return "unknown-coating";
  if (kind === "vinyl" && coating !== "pu") return "pvc";
  return mayBePlastic(kind) && polymer === "unknown" ? "unknown-polymer" : null;
}

import type { ConstructionId, CoreWish } from "../wish/strapWish.ts";
import { CONSTRUCTIONS } from "./catalogue.ts";

/** The cord or webbing of a strap that a construction has a place for: what stays when a strap is built another way. */
export function coreFor(construction: ConstructionId, core: CoreWish | undefined): CoreWish | undefined {
  const { needs } = CONSTRUCTIONS[construction];
  if (core === undefined || needs.length === 0) return undefined;
  const { cordDiameter, webbingWidth, webbingThickness } = core;
  return needs.includes("cord") ? { cordDiameter } : { webbingWidth, webbingThickness };
}

import { CONSTRUCTIONS } from "./constructions/catalogue.ts";
import type { ConstructionId, CoreWish } from "./strapWish.ts";

/** The cord or webbing of a strap that a construction has a place for: what stays when a strap is built another way. */
export function coreFor(construction: ConstructionId, core: CoreWish | undefined): CoreWish | undefined {
  const { needs } = CONSTRUCTIONS[construction];
  if (core === undefined || needs.length === 0) return undefined;
  const { cordDiameter, webbingWidth, webbingThickness } = core;
  return needs.includes("cord") ? { cordDiameter } : { webbingWidth, webbingThickness };
}

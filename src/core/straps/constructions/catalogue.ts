import type { ConstructionId, CoreWish } from "../wish/strapWish.ts";
import { bonded } from "./bonded.ts";
import type { Construction } from "./construction.ts";
import { corded } from "./corded.ts";
import { fourfold } from "./fourfold.ts";
import { sewnTurned } from "./sewnTurned.ts";
import { tab } from "./tab.ts";
import { threeHemmed } from "./threeHemmed.ts";
import { threeRaw } from "./threeRaw.ts";
import { tube } from "./tube.ts";
import { twoLayer } from "./twoLayer.ts";
import { webbingOverlay } from "./webbingOverlay.ts";
import { webbingSleeve } from "./webbingSleeve.ts";

/** Every construction by its id. */
export const CONSTRUCTIONS: Readonly<Record<ConstructionId, Construction>> = {
  fourfold,
  "three-raw": threeRaw,
  "three-hemmed": threeHemmed,
  "two-layer": twoLayer,
  "sewn-turned": sewnTurned,
  tube,
  bonded,
  "webbing-overlay": webbingOverlay,
  "webbing-sleeve": webbingSleeve,
  corded,
  tab,
};

/** The cord or webbing of a strap that a construction has a place for: what stays when a strap is built another way. */
export function coreFor(construction: ConstructionId, core: CoreWish | undefined): CoreWish | undefined {
  const { needs } = CONSTRUCTIONS[construction];
  if (core === undefined || needs.length === 0) return undefined;
  const { cordDiameter, webbingWidth, webbingThickness } = core;
  return needs.includes("cord") ? { cordDiameter } : { webbingWidth, webbingThickness };
}

import { CONSTRUCTION_IDS, type ConstructionId, type CoreWish } from "../wish/strapWish.ts";
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

/** Constructions that need nothing bought but cloth, offered in place of one another. */
export const CLOTH_CONSTRUCTIONS: readonly ConstructionId[] = CONSTRUCTION_IDS.filter((id) => {
  const { offered, roles } = CONSTRUCTIONS[id];
  return offered && !Object.values(roles).includes("needed");
});

/** The cord or webbing of a strap that a construction has a place for: what stays when a strap is built another way. */
export function coreFor(construction: ConstructionId, core: CoreWish | undefined): CoreWish | undefined {
  const { roles } = CONSTRUCTIONS[construction];
  if (core === undefined) return undefined;
  const { cordDiameter, webbingWidth, webbingThickness } = core;
  if (roles.cord === "needed") return { cordDiameter };
  return roles.webbing === "needed" ? { webbingWidth, webbingThickness } : undefined;
}

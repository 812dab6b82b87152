import type { ConstructionId } from "../wish/strapWish.ts";
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

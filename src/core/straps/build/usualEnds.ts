import { CONSTRUCTIONS } from "../constructions/catalogue.ts";
import type { EndStyle, StrapWish } from "../wish/strapWish.ts";

/**
 * The end that is usual for a strap: the construction's own, folded over hardware for a slider or a ring, else caught
 * in a seam (common practice, no source).
 */
export function usualEndStyle(wish: StrapWish): EndStyle {
  const construction = CONSTRUCTIONS[wish.construction];
  const adjusts = (wish.adjustment ?? "fixed") !== "fixed";
  const holds = (wish.hardware ?? []).length > 0 && !construction.overRing;
  return construction.usualEnd ?? (adjusts || holds ? "fold-back" : "seam");
}

/** The end of a strap of which nothing is said: the usual one, but a length that is not a drop is taken as it is. */
export function unsaidEndStyle(wish: StrapWish): EndStyle {
  const usual = usualEndStyle(wish);
  return usual === "seam" && wish.length.kind !== "drop" ? "raw" : usual;
}

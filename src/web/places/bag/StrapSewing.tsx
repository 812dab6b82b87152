import type { StrapWish } from "../../../core/straps/strapWish.ts";

/** How the strap is made, step by step, with its cautions. */
export function StrapSewing(_props: { strap: StrapWish }) {
  return null;
}

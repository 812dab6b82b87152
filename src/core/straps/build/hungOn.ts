import type { EndStyle, HardwareWish } from "../wish/strapWish.ts";
import type { ResolvedWish } from "./resolveWish.ts";

type Ends = readonly { readonly style: EndStyle }[];

/**
 * The rings and clasps a strap hangs on, in the order they are met: one at each end that is folded back (of a one-piece
 * adjustable strap the ring that it runs through is the first), and the ring between the halves of a two-part strap.
 */
export function hungOn({ wish, construction }: ResolvedWish, ends: Ends): readonly HardwareWish[] {
  const parts = (wish.hardware ?? []).filter((one) => one.kind !== "slider");
  if (parts.length === 0) return [];
  if (construction.overRing) return parts.slice(0, 1);
  const atEnds = ends.filter((end) => end.style === "fold-back").map((_, i) => parts[i % parts.length]!);
  const ring = wish.adjustment === "two-part" ? parts.filter((one) => one.kind === "ring").slice(0, 1) : [];
  return [...atEnds, ...ring];
}

/** What the hardware itself adds to the worn length, mm; nothing where its own length is not known. */
export function hardwareLength(resolved: ResolvedWish, ends: Ends): number {
  if (resolved.construction.overRing) return 0;
  return hungOn(resolved, ends).reduce((sum, one) => sum + (one.length ?? 0), 0);
}

import type { StrapWish } from "../straps/wish/strapWish.ts";
import type { PanelWords } from "../words/panelWords.ts";
import { as, type BagDraft, CLOTH, edgesOf, of, type PartMaker, seam } from "./bagPanels.ts";
import type { BagWish } from "./bagWish.ts";
import { hasDepth } from "./bodies.ts";

const NOTHING: BagDraft = { panels: [], seams: [] };

/** Zip panel or flap at the bag's opening. */
export function openingOf(wish: BagWish, outer: PartMaker, lining: PartMaker): BagDraft {
  if (wish.opening === "flap") return flapOf(wish, outer, lining);
  // A pouch and a flat bag take the zip in the seam of their upper edges.
  if (wish.opening === "open" || wish.body === "pouch" || !hasDepth(wish)) return NOTHING;
  const upper = wish.body === "wrap" ? as("body", "frontTop") : as("front", "top");
  const strip = outer("zipPanel", "zip-panel", { length: [upper], width: [of("depth")] }, { count: 2 });
  const [panel, edge] = wish.body === "wrap" ? ["body", "frontTop"] : ["front", "top"];
  return { panels: [strip], seams: [seam(edgesOf("zipPanel", "seam"), edgesOf(panel!, edge!))] };
}

function flapOf(wish: BagWish, outer: PartMaker, lining: PartMaker): BagDraft {
  // The wrap-round body has its flap in one with it.
  if (wish.body === "wrap") return NOTHING;
  const sizes = { width: [as("back", "top")], height: [of("height", 0.6)] };
  const joined = seam(edgesOf("flap", "top"), edgesOf("back", "top"));
  if (wish.lining === null) return { panels: [outer("flap", "flap-round", sizes)], seams: [joined] };
  const inside = lining("liningFlap", "flap-round", {
    width: [as("flap", "width")],
    height: [as("flap", "height")],
  });
  const round = seam(edgesOf("flap", "round"), edgesOf("liningFlap", "round"));
  return { panels: [outer("flap", "flap-round", sizes), inside], seams: [joined, round] };
}

/** Pockets inside the bag. */
export function pocketsOf({ pockets, lining }: BagWish, make: PartMaker): BagDraft {
  const slip = (): BagDraft["panels"][number] =>
    make(
      "slipPocket",
      "slip-pocket",
      { width: [of("width", 0.6)], height: [of("height", 0.5)] },
      // Turned in at the top: an inch of hem (common practice, no source).
      { edges: [{ edge: "top", allowance: 25, hem: true }], count: lining === null ? 1 : 2 },
    );
  const zip = (): BagDraft["panels"][number] =>
    make("zipPocket", "zip-pocket", {
      width: [of("width", 0.7)],
      height: [of("height", 0.5)],
      window: [of("width", 0.55)],
      drop: [of("height", 0.15)],
    });
  const panels = [
    ...(pockets === "slip" || pockets === "both" ? [slip()] : []),
    ...(pockets === "zip" || pockets === "both" ? [zip()] : []),
  ];
  return { panels, seams: [] };
}

/** Straps of a bag, an inch wide, folded in four; lengths are usual ones (common practice, no source). */
export function strapsOf({ straps, interfacing }: BagWish, words: PanelWords): StrapWish[] {
  if (straps === "none") return [];
  const usual = {
    handles: { id: "handle", name: words.straps.handle, count: 2, width: 25, length: 600 },
    shoulder: { id: "shoulder", name: words.straps.shoulder, count: 1, width: 25, length: 1200 },
    wrist: { id: "wrist", name: words.straps.wrist, count: 1, width: 15, length: 320 },
  }[straps];
  return [
    {
      id: usual.id,
      name: usual.name,
      construction: "fourfold",
      count: usual.count,
      width: { kind: "finished", mm: usual.width },
      length: { kind: "finished", mm: usual.length },
      materials: { outer: CLOTH.outer, ...(interfacing === "none" ? {} : { interfacing: CLOTH.interfacing }) },
      ...(interfacing === "none" ? {} : { interfacing: "full" }),
    },
  ];
}

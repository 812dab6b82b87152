/**
 * How a cloth lies on the table when more than one layer is cut at once. Null, and one layer right side up, where
 * nothing is said. Only rolls are spread; leftovers and skins are cut singly.
 */
export type Spread =
  /** Folded lengthwise, right sides together, selvedge on selvedge: two layers of half the width. */
  | { readonly kind: "folded" }
  /** Lengths of full width on one another, cut to the same length: all face up, or in twos face to face. */
  | { readonly kind: "layers"; readonly layers: number; readonly faces: SpreadFaces };

/** `up`: right sides up in every layer; `together`: each second layer turned over, right side on right side. */
export const SPREAD_FACES = ["up", "together"] as const;

export type SpreadFaces = (typeof SPREAD_FACES)[number];

/** Fewest and most layers that are laid on one another. */
export const LEAST_LAYERS = 2;
export const MOST_LAYERS = 50;

/** Layers under a piece that is laid once. */
export function layersOf(spread: Spread | null): number {
  if (spread === null) return 1;
  return spread.kind === "folded" ? 2 : spread.layers;
}

/** Whether each second layer is the mirror image of the first. */
export function facesTogether(spread: Spread | null): boolean {
  return spread !== null && (spread.kind === "folded" || spread.faces === "together");
}

/** Lengths cut off the roll one after the other: one where the cloth is folded lengthwise. */
export function lengthsCut(spread: Spread | null): number {
  return spread?.kind === "layers" ? spread.layers : 1;
}

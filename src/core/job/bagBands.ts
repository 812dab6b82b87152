import type { LayPiece, LayProblem, LaySpread } from "../lay/problem/layProblem.ts";
import type { Material } from "../materials/material.ts";

/** Why the parts of each bag cannot be kept in one band of a cloth. */
export type BandLost =
  /** Not every piece comes in equal numbers for each bag. */
  | "uneven"
  /** Layers on one another give as many bags at a time, and the bags are no multiple of them. */
  | "layers"
  /** Folded cloth gives two of each piece, and the bags are no even number. */
  | "twos"
  /** Right sides together, left and right parts come of different layers. */
  | "hands"
  /** Some pieces lie on the fold, where they are held. */
  | "fold";

/**
 * Among how many bags the copies laid on the top layer are shared out, so that the parts of each bag lie in one band
 * of the roll; or why that cannot be.
 *
 * Lengths laid on one another are different stretches of the roll: every layer then has whole bags of its own. Folded
 * lengthwise, both layers are the same stretch: two bags may share what is cut at once, and then both lie in one band.
 */
export function bagsInBands(
  bags: number,
  pieces: readonly LayPiece[],
  spread: LaySpread | undefined,
): number | BandLost {
  const isShared = (among: number): boolean =>
    Number.isInteger(among) && pieces.every(({ count }) => count % among === 0);
  if (spread === undefined) return isShared(bags) ? bags : "uneven";
  const { layers, folded, faces } = spread;
  if (folded) {
    if (pieces.some(({ gives }) => gives?.onFold === true)) return "fold";
    if (isShared(bags)) return bags;
    if (bags % 2 !== 0) return "twos";
    return isShared(bags / 2) ? bags / 2 : "uneven";
  }
  if (faces === "together" && pieces.some(({ gives }) => gives?.asDrawn !== layers)) return "hands";
  if (bags % layers !== 0) return "layers";
  return isShared(bags / layers) ? bags / layers : "uneven";
}

/** What a lay problem holds besides, where all pieces lie the same of two ways, or the parts of each bag are kept together. */
export function oneWayAndShade(
  { oneWay, shadeBand }: Material,
  bags: number,
  { pieces, spread }: Pick<LayProblem, "pieces" | "spread">,
): Pick<LayProblem, "sameWay" | "shade"> {
  const among = shadeBand === undefined ? null : bagsInBands(bags, pieces, spread);
  return {
    ...(oneWay === "free" ? { sameWay: true } : {}),
    ...(typeof among === "number" ? { shade: { bags: among, band: shadeBand! } } : {}),
  };
}

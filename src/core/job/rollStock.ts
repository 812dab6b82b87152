import { lengthFromRoll } from "../buying/layerLengths.ts";
import { type Polygon, reversedRing, solid } from "../geometry/ring.ts";
import type { RollStock } from "../lay/problem/layProblem.ts";
import type { Material } from "../materials/material.ts";
import { lengthsCut, type Spread } from "../materials/spread.ts";
import { type ClothRoll, flawPolygon, usableWidth } from "../materials/stock.ts";

/**
 * x starts after the squared end, y above the selvedge. A roll that is washed before cutting is that much smaller;
 * leftovers are taken as measured, washed already.
 */
export function rollStock(roll: ClothRoll, material: Material): RollStock {
  const { along, across } = washed(material);
  const { repeat } = material;
  const line = roll.firstLine ?? (repeat && { along: repeat.firstAlong, across: repeat.firstAcross });
  return {
    kind: "roll",
    id: roll.id,
    ...(line ? { firstLine: [(line.along - roll.squaring) * along, (line.across - roll.selvedge) * across] } : {}),
    width: usableWidth(roll) * across,
    length: roll.length === null ? null : Math.max(0, roll.length - 2 * roll.squaring) * along,
    flaws: roll.flaws.map((flaw) => movedScaled(flawPolygon(flaw), -roll.squaring, -roll.selvedge, along, across)),
  };
}

/**
 * A roll as its top layer lies when it is spread: folded, y runs from the fold to the selvedges and a flaw of either
 * half is one of both; in layers, every length is as long as the roll gives that many of.
 */
export function spreadRoll(roll: ClothRoll, material: Material, spread: Spread): RollStock {
  const single = rollStock(roll, material);
  if (spread.kind === "folded") {
    const middle = single.width / 2;
    const flaws = single.flaws.flatMap((flaw) => [
      movedScaled(flaw, 0, -middle, 1, 1),
      movedScaled(flaw, 0, -middle, 1, -1),
    ]);
    return { ...single, width: middle, flaws, folded: true };
  }
  if (roll.length === null) return single;
  // A pattern is measured before the wash, as the roll is.
  const each = lengthFromRoll(roll.length, lengthsCut(spread), material.repeat?.along ?? null);
  return { ...single, length: Math.max(0, each - 2 * roll.squaring) * washed(material).along };
}

/** Shares of length that are left when a material is washed before it is cut. */
export function washed({ shrinkage }: Material): { readonly along: number; readonly across: number } {
  const isWashed = shrinkage.when === "before-cutting";
  return {
    along: isWashed ? 1 - shrinkage.lengthwise : 1,
    across: isWashed ? 1 - shrinkage.crosswise : 1,
  };
}

/** Moved first, then stretched; a negative stretch mirrors. */
function movedScaled({ outer }: Polygon, x: number, y: number, along: number, across: number): Polygon {
  const ring = outer.map((value, i) => (i % 2 === 0 ? (value + x) * along : (value + y) * across));
  return solid(along * across < 0 ? reversedRing(ring) : ring);
}

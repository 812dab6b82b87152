import type { Material } from "./material.ts";
import type { Spread } from "./spread.ts";
import type { ClothRoll } from "./stock.ts";

/**
 * How a material is spread for cutting; null when it is cut as one layer. Only rolls are spread. Lengths that lie on
 * one another hide their flaws, so a roll with flaws is not laid in layers; folded lengthwise, a flaw is kept clear of
 * in both. Face to face, layers come in twos.
 */
export function spreadOf({ spread, stock }: Pick<Material, "spread" | "stock">): Spread | null {
  const rolls = stock.filter((each): each is ClothRoll => each.kind === "roll");
  if (!spread || rolls.length === 0) return null;
  if (spread.kind === "folded") return spread;
  const isWhole = rolls.every(({ flaws }) => flaws.length === 0);
  return isWhole && (spread.faces === "up" || spread.layers % 2 === 0) ? spread : null;
}

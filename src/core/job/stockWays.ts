import { polygonArea } from "../geometry/ring.ts";
import { shapePolygon } from "../geometry/shape.ts";
import type { Material } from "../materials/material.ts";
import type { ClothRoll, MaterialStock, ShapedStock } from "../materials/stock.ts";
import { freshIdIn } from "../project/edits.ts";
import type { Project } from "../project/project.ts";

/** Other stock to cut from: a leftover or skin used or kept back, or everything from a roll. */
export type StockWay =
  | { readonly kind: "leftover"; readonly stockId: string; readonly use: boolean }
  | { readonly kind: "roll" };

/** Leftovers looked at for a material; the largest first. */
const MOST_LEFTOVERS = 4;
/** A roll that is not there yet, mm. Widths that cloth is sold in: common practice, no source. */
const BOUGHT = { width: 1400, selvedge: 10, squaring: 20 };

/** Every leftover and skin the other way than now, and, where one is in use, everything from a roll that is bought. */
export function stockWays({ kind, stock }: Material): readonly StockWay[] {
  const leftovers = stock.filter(isLeftover).sort((a, b) => areaOf(b) - areaOf(a));
  const used = leftovers.filter(({ keptBack }) => !keptBack);
  const hasRoll = stock.some(isOpenRoll);
  const ways = leftovers.slice(0, MOST_LEFTOVERS).flatMap(({ id, keptBack }): StockWay[] => {
    const isAll = !keptBack && used.length === 1;
    // Without its only stock a material has nothing to lie on; from a roll alone is the way after this one.
    return isAll ? [] : [{ kind: "leftover", stockId: id, use: keptBack === true }];
  });
  // Leather is sold by the skin.
  return used.length > 0 && (hasRoll || kind !== "leather") ? [...ways, { kind: "roll" }] : ways;
}

/** A material of the project with other stock to cut from; nothing that is there is thrown away. */
export function withStock(project: Project, material: Material, way: StockWay): Material {
  if (way.kind === "leftover")
    return {
      ...material,
      stock: material.stock.map((each) =>
        isLeftover(each) && each.id === way.stockId ? { ...each, keptBack: !way.use } : each,
      ),
    };
  const kept = material.stock.map((each) => (isLeftover(each) ? { ...each, keptBack: true } : each));
  return { ...material, stock: kept.some(isOpenRoll) ? kept : [...kept, boughtRoll(project)] };
}

function boughtRoll(project: Project): ClothRoll {
  return { kind: "roll", id: freshIdIn(project, "roll"), ...BOUGHT, length: null, flaws: [] };
}

function isLeftover(stock: MaterialStock): stock is ShapedStock {
  return stock.kind !== "roll";
}

function isOpenRoll(stock: MaterialStock): boolean {
  return stock.kind === "roll" && stock.length === null;
}

function areaOf({ shape }: ShapedStock): number {
  return polygonArea(shapePolygon(shape));
}

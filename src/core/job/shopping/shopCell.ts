import type { PieceGrain } from "../../materials/cutPiece.ts";
import type { Material } from "../../materials/material.ts";
import type { ClothRoll } from "../../materials/stock.ts";
import { strapMaterial } from "../../project/cutList.ts";
import { freshIdIn } from "../../project/edits.ts";
import type { Project } from "../../project/project.ts";
import { buildStrap } from "../../straps/build/buildStrap.ts";
import { rebuiltAs } from "../../straps/build/unusedChoices.ts";
import { CLOTH_CONSTRUCTIONS, CONSTRUCTIONS } from "../../straps/constructions/catalogue.ts";
import type { ConstructionId, StrapWish } from "../../straps/wish/strapWish.ts";
import { clothArea } from "../otherWays.ts";

/** A width that a shop has a cloth in, selvedges and all, mm, and what a length of it costs there. */
export interface SoldWidth {
  readonly width: number;
  /** Price of the length that the material's price is for; null: as the material says. */
  readonly amount: number | null;
}

/** One way to buy and use a cloth. Null: as the project says. */
export interface ShopCell {
  readonly sold: SoldWidth;
  /** How all straps of this cloth are made that need nothing bought but cloth. */
  readonly construction: ConstructionId | null;
  /** Which way all straps of this cloth lie. */
  readonly direction: Exclude<PieceGrain, "free"> | null;
  /** Whether straps may be joined. */
  readonly joins: boolean | null;
}

/** Widths that cloth is sold in, mm: 110, 137, 142, 150 cm, 44, 54, 60 in. Common practice, no source. */
export const SHOP_WIDTHS: readonly number[] = [1100, 44 * 25.4, 1370, 54 * 25.4, 1420, 1500, 60 * 25.4];

/** Other constructions looked at unless told. */
const MOST_OTHERS = 3;
/** A roll that is not there yet: selvedge and squaring as is usual, mm (common practice, no source). */
const BOUGHT = { selvedge: 10, squaring: 20 };

/** The roll a cloth is bought from: the project's own open one, or one as is usual. */
export function shopRoll(project: Project, material: Material): ClothRoll | null {
  const open = material.stock.find((stock) => stock.kind === "roll" && stock.length === null);
  if (open !== undefined) return open as ClothRoll;
  const { selvedge, squaring } = material.stock.find((stock) => stock.kind === "roll") ?? BOUGHT;
  // Leather is sold by the skin.
  if (material.kind === "leather") return null;
  return { kind: "roll", id: freshIdIn(project, "roll"), width: 1400, selvedge, squaring, length: null, flaws: [] };
}

/** Whether a strap of a cloth can be made another way with nothing else bought. */
function isRemade({ construction, materials }: StrapWish, materialId: string): boolean {
  return materials.outer === materialId && CLOTH_CONSTRUCTIONS.includes(construction);
}

/** Other constructions for all straps of a cloth, those that take least cloth first; none where a strap has no such way. */
export function otherConstructions(project: Project, material: Material): readonly ConstructionId[] {
  const straps = project.straps.filter((strap) => isRemade(strap, material.id));
  if (straps.length === 0) return [];
  const materials = project.materials.map(strapMaterial);
  const takes = (id: ConstructionId): number =>
    straps.reduce((sum, strap) => {
      const built = buildStrap(rebuiltAs(strap, id), materials);
      return sum + (built.ok ? clothArea(built.value) : Infinity);
    }, 0);
  return (
    CLOTH_CONSTRUCTIONS
      // A raw edge is not offered for cloth that frays. Common practice, no source.
      .filter((id) => material.kind !== "woven" || CONSTRUCTIONS[id].visibleEdges({}) === 0)
      .filter((id) => straps.some(({ construction }) => construction !== id))
      .map((id) => ({ id, area: takes(id) }))
      .filter(({ area }) => area < Infinity)
      .sort((a, b) => a.area - b.area)
      .slice(0, MOST_OTHERS)
      .map(({ id }) => id)
  );
}

/**
 * The project as a cell says: the cloth from a new roll of the width, straps made and laid its way. Where `own` is
 * false what there is of the cloth stays on its shelf. Nothing is pinned.
 */
export function projectOfCell(project: Project, material: Material, cell: ShopCell, own: boolean): Project {
  const roll = shopRoll(project, material);
  if (roll === null) return project;
  const bought = { ...roll, width: cell.sold.width };
  const kept = own ? material.stock.filter(({ id }) => id !== roll.id) : [];
  const { amount } = cell.sold;
  const price = material.price && amount !== null ? { ...material.price, amount } : material.price;
  const changed: Material = { ...material, price, stock: [...kept, bought] };
  const straps = project.straps.map((strap): StrapWish => {
    if (strap.materials.outer !== material.id) return strap;
    const made =
      cell.construction !== null && isRemade(strap, material.id) ? rebuiltAs(strap, cell.construction) : strap;
    const laid = cell.direction === null ? made : { ...made, grain: cell.direction };
    return cell.joins === null ? laid : { ...laid, joins: { ...laid.joins, allowed: cell.joins } };
  });
  const materials = project.materials.map((each) => (each.id === material.id ? changed : each));
  return { ...project, materials, straps, pins: [], plans: undefined };
}

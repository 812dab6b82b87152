import { polygonArea } from "../geometry/ring.ts";
import type { PieceGrain } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import { strapMaterial } from "../project/cutList.ts";
import type { Project } from "../project/project.ts";
import { buildStrap } from "../straps/build/buildStrap.ts";
import type { StrapResult } from "../straps/build/strapResult.ts";
import { rebuiltAs } from "../straps/build/unusedChoices.ts";
import { CLOTH_CONSTRUCTIONS, CONSTRUCTIONS } from "../straps/constructions/catalogue.ts";
import type { ConstructionId, StrapWish } from "../straps/wish/strapWish.ts";
import { type StockWay, stockWays, withStock } from "./stockWays.ts";

/** Something a maker could decide otherwise to need less cloth, or to learn what her choice costs. */
export type OtherWay =
  | { readonly kind: "grain"; readonly grain: Exclude<PieceGrain, "free"> }
  | { readonly kind: "width"; readonly width: number }
  | { readonly kind: "construction"; readonly strapId: string; readonly construction: ConstructionId }
  | StockWay;

/** Widths that cloth is sold in, mm. Common practice, no source. */
const SOLD_WIDTHS = [900, 1100, 1400, 1500];
/** Widths nearer than this are the same to a shop, mm. */
const SAME_WIDTH = 25;
/** Straps for which another construction is looked at. */
const MOST_STRAPS = 2;

/** The ways worth weighing for one material: other stock, other grain, other width, thriftier construction. */
export function otherWays(project: Project, materialId: string): readonly OtherWay[] {
  const material = project.materials.find(({ id }) => id === materialId);
  if (material === undefined) return [];
  return [
    ...stockWays(material),
    ...otherGrains(material),
    ...otherWidths(material),
    ...thriftierConstructions(project, material),
  ];
}

/** The project with one thing decided otherwise. */
export function inOtherWay(project: Project, materialId: string, way: OtherWay): Project {
  if (way.kind === "construction") {
    const straps = project.straps.map((strap) =>
      strap.id === way.strapId ? rebuiltAs(strap, way.construction) : strap,
    );
    return { ...project, straps };
  }
  const materials = project.materials.map((material): Material => {
    if (material.id !== materialId) return material;
    if (way.kind === "grain") return { ...material, grain: way.grain };
    if (way.kind !== "width") return withStock(project, material, way);
    const open = openRoll(material);
    const stock = material.stock.map((each) => (each === open ? { ...open, width: way.width } : each));
    return { ...material, stock };
  });
  return { ...project, materials };
}

function otherGrains({ grain }: Material): OtherWay[] {
  if (grain === "free") return [];
  const grains = ["either", "lengthwise", "crosswise"] as const;
  return grains.filter((other) => other !== grain).map((other) => ({ kind: "grain", grain: other }));
}

function openRoll(material: Material) {
  return material.stock.flatMap((stock) => (stock.kind === "roll" && stock.length === null ? [stock] : []))[0];
}

function otherWidths(material: Material): OtherWay[] {
  const roll = openRoll(material);
  if (roll === undefined) return [];
  return SOLD_WIDTHS.filter((width) => Math.abs(width - roll.width) > SAME_WIDTH).map((width) => ({
    kind: "width",
    width,
  }));
}

/** The construction that takes the least cloth for each strap, when it takes less than the strap's own. */
function thriftierConstructions(project: Project, { id: materialId, kind }: Material): OtherWay[] {
  // A raw edge is not offered for cloth that frays. Common practice, no source.
  const offered = CLOTH_CONSTRUCTIONS.filter((id) => kind !== "woven" || CONSTRUCTIONS[id].visibleEdges({}) === 0);
  const materials = project.materials.map(strapMaterial);
  const clothOf = (strap: StrapWish) => {
    const built = buildStrap(strap, materials);
    return built.ok ? clothArea(built.value) : Infinity;
  };
  return project.straps
    .filter((strap) => strap.materials.outer === materialId)
    .slice(0, MOST_STRAPS)
    .flatMap((strap): OtherWay[] => {
      let least = clothOf(strap) - 1;
      let best: ConstructionId | null = null;
      if (!CLOTH_CONSTRUCTIONS.includes(strap.construction)) return [];
      for (const id of offered) {
        const cloth = id === strap.construction ? Infinity : clothOf(rebuiltAs(strap, id));
        if (cloth >= least) continue;
        least = cloth;
        best = id;
      }
      return best === null ? [] : [{ kind: "construction", strapId: strap.id, construction: best }];
    });
}

/** Outer cloth of a strap in all its copies, mm². */
export function clothArea({ pieces, wish }: StrapResult): number {
  return pieces
    .filter(({ materialId }) => materialId === wish.materials.outer)
    .reduce((sum, piece) => sum + piece.count * polygonArea(piece.outline), 0);
}

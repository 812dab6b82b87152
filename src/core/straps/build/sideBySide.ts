import { polygonArea } from "../../geometry/ring.ts";
import type { Price } from "../../materials/price.ts";
import { CONSTRUCTIONS } from "../constructions/catalogue.ts";
import { CONSTRUCTION_IDS, type ConstructionId, type StrapMaterial, type StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { OVER_MACHINE } from "./limits.ts";
import type { StrapResult } from "./strapResult.ts";
import { rebuiltAs } from "./unusedChoices.ts";

/** One construction beside the others: what it takes, and how it fares. Lengths in mm. */
export interface BesideOthers {
  readonly construction: ConstructionId;
  readonly cutWidth: number;
  readonly thickness: number;
  readonly layers: number;
  /** Roll length for all straps laid along the roll, and across it; null when they do not fit, may not lie so or no width is known. */
  readonly lengthwise: number | null;
  readonly crosswise: number | null;
  /** Outer cloth of all straps, mm². */
  readonly cloth: number;
  /** Of the thriftier of both, or of the cloth alone where it is priced by area; null when it cannot be known. */
  readonly cost: number | null;
  /** Passes the machine, hers or the home machine assumed. */
  readonly machine: boolean;
  /** Passes the slider; true where there is none. */
  readonly slider: boolean;
  /** Raw edges that show along the strap. */
  readonly rawEdges: number;
}

/** A construction beside the others, with the strap it would be. */
export interface StrapBesideOthers extends BesideOthers {
  readonly strap: StrapResult;
}

/** What cloth costs, for a length of roll or an area. */
export type ClothPrice = Pick<Price, "amount" | "basis">;

/** Roll length for `count` strips that take `across` of the width and `along` of the length each. */
function rollFor(count: number, across: number, along: number, usable: number): number | null {
  const side = Math.floor((usable + 1e-6) / across);
  return side < 1 ? null : Math.ceil(count / side) * along;
}

function costOf(price: ClothPrice | null, roll: number, cloth: number): number | null {
  if (price === null || price.basis.kind === "each") return null;
  if (price.basis.kind === "area") return (price.amount * cloth) / price.basis.mm2;
  return Number.isFinite(roll) ? (price.amount * roll) / price.basis.mm : null;
}

/**
 * Every construction that one strap could have in its materials, at one width, length and number, in the order of the
 * list; those that cannot be made are left out, such as a corded handle without its cord. Webbing follows from the width.
 * `as` builds the wish another way: what the other way uses goes along.
 *
 * Cost: a dozen straps.
 */
export function sideBySide(
  wish: StrapWish,
  materials: readonly StrapMaterial[],
  price: ClothPrice | null,
  as: (wish: StrapWish, id: ConstructionId) => StrapWish = rebuiltAs,
): readonly StrapBesideOthers[] {
  return CONSTRUCTION_IDS.flatMap((construction): StrapBesideOthers[] => {
    const { overRing, visibleEdges } = CONSTRUCTIONS[construction];
    const own = as(wish, construction);
    const built = buildStrap(own, materials);
    if (!built.ok || overRing) return [];
    const strap = built.value;
    const { cutWidth, thickness, layers, warnings } = strap;
    const outer = strap.pieces.filter(({ materialId }) => materialId === wish.materials.outer);
    const usable = materials.find(({ id }) => id === wish.materials.outer)?.usableWidth;
    const rolls = (turned: boolean): number | null => {
      if (usable === undefined || outer.some(({ grain }) => grain === (turned ? "lengthwise" : "crosswise")))
        return null;
      const each = outer.map(({ count, outline }) => {
        const { length, width } = sidesOf(outline.outer);
        return turned ? rollFor(count, length, width, usable) : rollFor(count, width, length, usable);
      });
      return each.includes(null) ? null : each.reduce<number>((sum, mm) => sum + mm!, 0);
    };
    const [lengthwise, crosswise] = [rolls(false), rolls(true)];
    const least = Math.min(lengthwise ?? Number.POSITIVE_INFINITY, crosswise ?? Number.POSITIVE_INFINITY);
    const cloth = outer.reduce((sum, { count, outline }) => sum + count * polygonArea(outline), 0);
    return [
      {
        ...{ construction, cutWidth, thickness, layers, lengthwise, crosswise, cloth, strap },
        cost: costOf(price, least, cloth),
        machine: !warnings.some(({ code }) => OVER_MACHINE.has(code)),
        slider: !warnings.some(({ code }) => code === "slider-tight"),
        rawEdges: visibleEdges(own.folds ?? {}),
      },
    ];
  });
}

/** Sides of a strip, which lies with its length along x. */
function sidesOf(ring: ArrayLike<number>): { readonly length: number; readonly width: number } {
  let [length, width] = [0, 0];
  for (let i = 0; i < ring.length; i += 2) {
    length = Math.max(length, ring[i]!);
    width = Math.max(width, ring[i + 1]!);
  }
  return { length, width };
}

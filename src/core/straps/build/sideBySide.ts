import { CONSTRUCTIONS } from "../constructions/catalogue.ts";
import { CONSTRUCTION_IDS, type ConstructionId, type StrapMaterial, type StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { rebuiltAs } from "./unusedChoices.ts";

/** One construction beside the others: what it takes, and how it fares. Lengths in mm. */
export interface BesideOthers {
  readonly construction: ConstructionId;
  readonly cutWidth: number;
  readonly thickness: number;
  readonly layers: number;
  /** Roll length for all straps laid along the roll, and across it; null when they do not fit or no width is known. */
  readonly lengthwise: number | null;
  readonly crosswise: number | null;
  /** Of the thriftier of both at this price for a metre of roll; null when either is not known. */
  readonly cost: number | null;
  /** Passes the machine, hers or the home machine assumed. */
  readonly machine: boolean;
  /** Passes the slider; true where there is none. */
  readonly slider: boolean;
  /** Raw edges that show along the strap. */
  readonly rawEdges: number;
}

const OVER_MACHINE: ReadonlySet<string> = new Set(["home-machine", "machine-thickness", "machine-layers"]);

/** Roll length for `count` strips that take `across` of the width and `along` of the length each. */
function rollFor(count: number, across: number, along: number, usable: number): number | null {
  const side = Math.floor((usable + 1e-6) / across);
  return side < 1 ? null : Math.ceil(count / side) * along;
}

/**
 * Every construction that one strap could have in its materials, at one width, length and number, in the order of the
 * list; those that cannot be made are left out, such as a corded handle without its cord. Webbing follows from the width.
 *
 * `price` is of one metre of roll, in any currency. Cost: a dozen straps.
 */
export function sideBySide(
  wish: StrapWish,
  materials: readonly StrapMaterial[],
  price: number | null,
): readonly BesideOthers[] {
  return CONSTRUCTION_IDS.flatMap((construction): BesideOthers[] => {
    const { overRing, visibleEdges } = CONSTRUCTIONS[construction];
    const built = buildStrap(rebuiltAs(wish, construction), materials);
    if (!built.ok || overRing) return [];
    const { cutWidth, thickness, layers, lengths, section, warnings } = built.value;
    const strips =
      section.kind === "wrapped" ? 1 : section.strips.filter(({ plan }) => plan.ply.role === "outer").length;
    const own = section.kind === "layered" && wish.materials.facing === undefined ? section.strips.length : strips;
    const usable = materials.find(({ id }) => id === wish.materials.outer)?.usableWidth;
    const count = own * wish.count;
    const lengthwise = usable === undefined ? null : rollFor(count, cutWidth, lengths.cut, usable);
    const crosswise = usable === undefined ? null : rollFor(count, lengths.cut, cutWidth, usable);
    const least = Math.min(lengthwise ?? Number.POSITIVE_INFINITY, crosswise ?? Number.POSITIVE_INFINITY);
    return [
      {
        ...{ construction, cutWidth, thickness, layers, lengthwise, crosswise },
        cost: price === null || !Number.isFinite(least) ? null : (least / 1000) * price,
        machine: !warnings.some(({ code }) => OVER_MACHINE.has(code)),
        slider: !warnings.some(({ code }) => code === "slider-tight"),
        rawEdges: visibleEdges({}),
      },
    ];
  });
}

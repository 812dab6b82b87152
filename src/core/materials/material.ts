import type { LengthStyle } from "../units/formatLength.ts";
import type { PieceGrain } from "./cutPiece.ts";
import type { Price } from "./price.ts";
import type { Spread } from "./spread.ts";
import type { MaterialStock } from "./stock.ts";

/** What a material is as far as folding, sewing and cutting go. */
export const MATERIAL_KINDS = [
  "woven",
  "vinyl",
  "leather",
  "cork",
  "felt",
  "interfacing",
  "padding",
  "webbing",
  "cord",
] as const;

export type MaterialKind = (typeof MATERIAL_KINDS)[number];

/** What the back is made of. Woven backing is stabler than knit; some knit-backed vinyl gives a tenth across. */
export const BACKINGS = ["unknown", "woven", "knit", "none"] as const;

export type Backing = (typeof BACKINGS)[number];

/** What a coated cloth is coated with. Vinyl is PVC: it must never meet a laser (hydrogen chloride). */
export const COATINGS = ["unknown", "pvc", "pu", "none"] as const;

export type Coating = (typeof COATINGS)[number];

/** What foam, felt, fusible, webbing or cord is made of, as its supplier states it; `none`: no plastic in it. */
export const POLYMERS = [
  "none",
  "polyester",
  "polyamide",
  "polypropylene",
  "polyethylene",
  "polyurethane",
  "eva",
  "pvc",
  "unknown",
] as const;

export type Polymer = (typeof POLYMERS)[number];

/** A folded test strip as it was measured, kept with its material. mm. */
export interface FoldReading<Construction extends string = string> {
  readonly construction: Construction;
  /** One layer, as measured. */
  readonly thickness: number;
  /** Width of the test strip as cut. */
  readonly cutWidth: number;
  /** Over the outside of the folded strip. */
  readonly finishedWidth: number;
  /** Fourfold: raw edge to centre crease, strip opened flat again. In three: visible edge to opposite fold. */
  readonly setback: number;
  /** Largest error of one reading: half a division of the ruler or more. */
  readonly readingError: number;
}

/** How a material folds, fitted by fold tests, said by the maker or left to the defaults of its kind. */
export interface FoldTraits {
  /** K: where in the thickness the length stays the same; 0 inner face, 0.5 middle. */
  readonly neutral?: number | undefined;
  /** Least inside radius it takes by itself, mm. */
  readonly leastRadius?: number | undefined;
  /** How far raw edges keep out of a bend: 0 crushed into it, 1 stop where it starts. */
  readonly clearance?: number | undefined;
  /** Test strips of this material: their mean stands where nothing is said above. */
  readonly tests?: readonly FoldReading[] | undefined;
}

/** Degrees: more than cutters grant off the grain (common practice, no source). */
export const MOST_TILT = 5;

/** When the cloth is washed. */
export const WASHED_WHEN = ["before-cutting", "after-making"] as const;

/** Shares of length lost in the wash. */
export interface Shrinkage {
  /** 0 … 0.3, along the warp. */
  readonly lengthwise: number;
  /** 0 … 0.3, along the weft. */
  readonly crosswise: number;
  /** `before-cutting`: washed first, so more is bought; `after-making`: the bag is washed, so pieces are cut larger. */
  readonly when: (typeof WASHED_WHEN)[number];
}

/** How the pattern of a cloth repeats: stripes along or across it, checks, or printed motifs. mm. */
export interface ClothRepeat {
  /** From one line or motif to the next along the roll; null where nothing repeats. */
  readonly along: number | null;
  readonly across: number | null;
  /** Where the first line lies on a roll: from its cut end, and from its lower edge, selvedge and all. */
  readonly firstAlong: number;
  readonly firstAcross: number;
  /** Looks the same turned by half. */
  readonly symmetric: boolean;
  /** Every second column of motifs across the roll is moved along by half a repeat. */
  readonly halfDrop: boolean;
  /** How far apart what is matched may lie. */
  readonly tolerance: number;
}

/** A repeat along the roll alone, of which nothing else is known. */
export const PLAIN_REPEAT: ClothRepeat = {
  along: null,
  across: null,
  firstAlong: 0,
  firstAcross: 0,
  symmetric: false,
  halfDrop: false,
  tolerance: 1,
};

/**
 * The way that all pieces lie on cloth with a nap or a print: their arrows up the roll, from its cut end on, or down to
 * it; or all alike either way, whichever takes less.
 */
export const ONE_WAYS = ["up", "down", "free"] as const;

export type OneWay = (typeof ONE_WAYS)[number];

/** A material of the project and what there is of it. Lengths in mm. */
export interface Material {
  readonly id: string;
  readonly name: string;
  readonly kind: MaterialKind;
  /** One layer as it lies in the strap. */
  readonly thickness: number;
  readonly backing: Backing;
  readonly coating: Coating;
  readonly polymer: Polymer;
  /** Directions the material may be used in, whatever a piece asks for. */
  readonly grain: PieceGrain;
  /** Nap or print that must point the same way on all pieces: which, or free; false when pieces may lie both ways. */
  readonly oneWay: OneWay | false;
  /** Length of roll within which the parts of one bag lie, so that they are of one shade, mm; anywhere when absent. */
  readonly shadeBand?: number | undefined;
  /** Degrees by which shaped panels may lie off their grain; straps and rectangles never do. None when absent. */
  readonly tilt?: number | undefined;
  /** Both faces can be the outside, so a piece may be turned over. */
  readonly facesAlike: boolean;
  readonly fold: FoldTraits;
  readonly shrinkage: Shrinkage;
  /** Null when there is no pattern to match. */
  readonly repeat: ClothRepeat | null;
  readonly price: Price | null;
  /** Where it is bought: shopping lists are ordered by it. */
  readonly source?: string | undefined;
  /** Least distance between pieces, and from the edge of the stock; null: as the project says. */
  readonly gap: number | null;
  readonly margin: number | null;
  /** How rolls lie on the table when several layers are cut at once; null: one layer, right side up. */
  readonly spread?: Spread | null | undefined;
  readonly stock: readonly MaterialStock[];
}

/** Divisions of an inch rule that mean something on a material. */
export type InchStep = Extract<LengthStyle, "in/16" | "in/32">;

const SOFT: ReadonlySet<MaterialKind> = new Set(["woven", "felt", "interfacing", "padding"]);

/** Cloth moves under the ruler by more than a thirty-second: sixteenths for it, thirty-seconds for what lies still (from memory). */
export function inchStepOf(kind: MaterialKind): InchStep {
  return SOFT.has(kind) ? "in/16" : "in/32";
}

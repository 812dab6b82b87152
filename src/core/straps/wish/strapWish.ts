import type { Material, MaterialKind } from "../../materials/material.ts";

/** Every way to build a strap that the program knows; the ids are part of the file format and the CLI. */
export const CONSTRUCTION_IDS = [
  "fourfold",
  "three-raw",
  "three-hemmed",
  "two-layer",
  "sewn-turned",
  "tube",
  "bonded",
  "webbing-overlay",
  "webbing-sleeve",
  "corded",
  "tab",
] as const;

export type ConstructionId = (typeof CONSTRUCTION_IDS)[number];

/** What can be chosen where a strap's wish is one of several words: for the file, the command line and the page alike. */
export const STRAP_CHOICES = {
  width: ["finished", "cut"],
  length: ["finished", "cut", "drop", "worn"],
  grain: ["either", "lengthwise", "crosswise"],
  adjustment: ["fixed", "one-piece", "two-part"],
  interfacing: ["none", "full", "reduced", "quarter"],
  hardware: ["ring", "slider", "clasp"],
  crease: ["hard", "soft"],
  joinSeam: ["diagonal", "straight", "lapped"],
  edgeFinish: ["as-cut", "paint", "burnish"],
  cutBy: ["fold", "trade"],
} as const;

type Choice<K extends keyof typeof STRAP_CHOICES> = (typeof STRAP_CHOICES)[K][number];

/** `finished` is measured over the outside of the finished strap, `cut` on the flat outer strip. */
export interface WidthWish {
  readonly kind: Choice<"width">;
  readonly mm: number;
}

/**
 * `finished`: end to end as it leaves the machine. `cut`: the flat strip, every allowance in it.
 * `drop`: from the top of the loop down to the bag, a strap caught at both ends.
 * `worn`: the longest loop length of an adjustable strap, else the same as finished.
 */
export interface LengthWish {
  readonly kind: Choice<"length">;
  readonly mm: number;
}

/** `fixed`: no slider. `one-piece`: one strip with a slider. `two-part`: a short half with a ring, a long one with the slider. */
export type Adjustment = Choice<"adjustment">;

/**
 * How an end is finished. `raw`: cut off, nothing added. `seam`: caught in a seam of the bag. `tucked`: the raw
 * end is turned inside before the strap is closed. `fold-back`: folded over a ring or slider and stitched down.
 * `doubled`: the flat end of a corded handle, folded back on itself.
 */
export type EndStyle = "raw" | "seam" | "tucked" | "fold-back" | "doubled";

/** What a maker may say of an end: a style, or `usual`, which is settled by construction, slider and hardware. */
export const END_WISHES = ["usual", "raw", "seam", "tucked", "fold-back", "doubled"] as const;

export interface EndWish {
  readonly style: (typeof END_WISHES)[number];
  /** Length used by this end, mm; the style's default when absent. */
  readonly allowance?: number | undefined;
}

/** Ids of the project's materials by what they do in the strap. Only `outer` is always needed. */
export interface MaterialRoles {
  readonly outer: string;
  readonly facing?: string | undefined;
  readonly interfacing?: string | undefined;
  readonly padding?: string | undefined;
  readonly webbing?: string | undefined;
  readonly cord?: string | undefined;
}

/** A bought part the strap runs through; `innerWidth` is the size it is sold by. mm. */
export interface HardwareWish {
  readonly kind: Choice<"hardware">;
  readonly innerWidth: number;
  /** What a ring or clasp adds to the worn length, from the strap's fold to where it hangs, mm. */
  readonly length?: number | undefined;
  /** Inner height of a slider, both sides of its bar together, mm. */
  readonly opening?: number | undefined;
  /** Thickness of the bar or wire the strap folds round, mm. */
  readonly bar?: number | undefined;
  /** A slider's centre bar does not move (thin straps slip on it). */
  readonly fixedBar?: boolean | undefined;
}

/** Hardware to have ready for all straps of the wish. mm. */
export interface HardwareNeeded {
  readonly kind: HardwareWish["kind"];
  readonly count: number;
  readonly innerWidth: number;
  /** Of a slider: its own where it is measured, else what the strap needs. */
  readonly opening: number | null;
  /** False where the maker named none and the strap cannot do without. */
  readonly named: boolean;
}

/** What the sewing machine can take, and what it sews with. mm. */
export interface SewingMachine {
  readonly maxThickness?: number | undefined;
  readonly maxLayers?: number | undefined;
  /** Room under its raised foot: a thicker stack does not go in. */
  readonly footLift?: number | undefined;
  /** Needle and thread by the kind of the outer material. */
  readonly needles?: readonly NeedleChoice[] | undefined;
}

/** What one kind of material is sewn with, in the maker's own words. */
export interface NeedleChoice {
  readonly kind: MaterialKind;
  readonly needle: string;
  readonly thread?: string | undefined;
}

/** Bought by the metre and laid into the strap: webbing or cord. mm. */
export interface CoreWish {
  readonly webbingWidth?: number | undefined;
  readonly webbingThickness?: number | undefined;
  readonly cordDiameter?: number | undefined;
}

/** Choices about the folds; each has the construction's own default. Lengths in mm. */
export interface FoldChoices {
  /** `hard`: pressed or hammered flat. `soft`: the material's own least radius stays in every fold. */
  readonly crease?: Choice<"crease"> | undefined;
  /** How far raw edges keep out of a bend: 0 crushed right into it, 1 stop where it starts. */
  readonly clearance?: number | undefined;
  /** Fourfold: each raw edge's distance from the centre crease in the flat. Overrides `clearance`. */
  readonly edgeGap?: number | undefined;
  /** In three: distance of the visible edge from the opposite fold. */
  readonly setback?: number | undefined;
  readonly hem?: number | undefined;
  /** Two-layer: how much of the outer strip shows on each side of the facing. */
  readonly reveal?: number | undefined;
  readonly seamAllowance?: number | undefined;
  /** Webbing overlay: bare webbing on each side. */
  readonly margin?: number | undefined;
  /** Webbing overlay: edge turned under. */
  readonly turn?: number | undefined;
  /** Turned edges and seam allowances skived to this, as far as their fold line. */
  readonly turnedThickness?: number | undefined;
  /** Bonded: cut oversize on each side and trimmed true after bonding. */
  readonly trim?: number | undefined;
  /** What is left of the padding's loose thickness in the strap, as a share: 0.4 when not said. */
  readonly paddingPressed?: number | undefined;
  /** Bonded: 1 to 3. */
  readonly layers?: number | undefined;
}

/** Stitch types of ISO 4915 whose thread we know to reckon. */
export const STITCH_TYPES = [301, 101, 401] as const;

export type StitchType = (typeof STITCH_TYPES)[number];

interface StitchChoices {
  readonly fromEdge?: number | undefined;
  /** Rows besides those the construction needs to hold together. */
  readonly extraRows?: number | undefined;
  /** mm per stitch. */
  readonly length?: number | undefined;
  /** Stitch type of ISO 4915: 301 lockstitch (default), 101 and 401 chain stitches. */
  readonly type?: StitchType | undefined;
}

/** Joining strips end to end is asked for, never assumed. `lapped` is for leather and vinyl. */
interface JoinChoices {
  readonly allowed: boolean;
  readonly seam?: Choice<"joinSeam"> | undefined;
  readonly seamAllowance?: number | undefined;
}

/** A strap as the maker asks for it, and as it stands in the project file. All lengths in mm. */
export interface StrapWish {
  readonly id: string;
  readonly name: string;
  readonly construction: ConstructionId;
  /** How many of this strap one bag needs. */
  readonly count: number;
  /** Absent only for a corded handle, whose width follows from the cord. */
  readonly width?: WidthWish | undefined;
  readonly length: LengthWish;
  readonly materials: MaterialRoles;
  /** Straps never lie on the bias. Default `either`. */
  readonly grain?: Choice<"grain"> | undefined;
  /** Default `fixed`. */
  readonly adjustment?: Adjustment | undefined;
  /** Cut length of the short half of a two-part strap, mm: 10 in when not said. */
  readonly shortPart?: number | undefined;
  /** Defaults follow from construction and adjustment. */
  readonly ends?: readonly [EndWish, EndWish] | undefined;
  /** What its ends are skived or trimmed to where they are folded back or turned in, mm; as thick as the strap when not said. */
  readonly endThickness?: number | undefined;
  /** Where interfacing goes: `full` W, `reduced` three quarters of W, `quarter` of W. Default `none`. */
  readonly interfacing?: Choice<"interfacing"> | undefined;
  readonly core?: CoreWish | undefined;
  readonly hardware?: readonly HardwareWish[] | undefined;
  readonly machine?: SewingMachine | undefined;
  readonly folds?: FoldChoices | undefined;
  readonly stitch?: StitchChoices | undefined;
  readonly joins?: JoinChoices | undefined;
  /** Raw edges that show: left as cut, painted, or burnished. Default `as-cut`. */
  readonly edgeFinish?: Choice<"edgeFinish"> | undefined;
  /** `fold`: the computed cut width (default). `trade`: the round multiple; the finished width is then solved for. */
  readonly cutBy?: Choice<"cutBy"> | undefined;
}

/** What the strap builder needs to know of one material; the project's materials carry all of it. mm. */
export interface StrapMaterial extends Pick<Material, "id" | "name" | "kind" | "thickness" | "backing" | "fold"> {
  /** Usable width of what is in stock; lets the builder say metres. Unknown when absent. */
  readonly usableWidth?: number | undefined;
  /** Longest straight piece that can be had along the roll; open when absent. */
  readonly longestPiece?: number | undefined;
}

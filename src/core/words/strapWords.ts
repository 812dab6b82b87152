import type { LineNote, PieceLine } from "../materials/cutPiece.ts";
import type { PlyRole } from "../straps/section/foldPlan.ts";
import type { PresetId } from "../straps/wish/presets.ts";
import type { ConstructionId, FoldChoices, HardwareNeeded } from "../straps/wish/strapWish.ts";
import type { strapPhrases } from "./en/strapPhrases.ts";

/** Every sentence, or part of one, that a strap's order of work and notes are made of. */
export type PhraseCode = keyof typeof strapPhrases;

/** What adds to a strap's length. */
export type LengthItemCode =
  | "finished"
  | "drop-twice"
  | "over-shoulder"
  | "worn-longest"
  | "worn-longest-less-short"
  | "doubled-at-slider"
  | "end-raw"
  | "end-seam"
  | "end-tucked"
  | "end-fold-back"
  | "end-doubled"
  | "trimmed-spare";

/** What is bought by the metre or the spool. */
export type ConsumableCode =
  | "tape"
  | "topstitch-thread"
  | "topstitch-thread-bobbin"
  | "construction-thread"
  | "construction-thread-bobbin"
  | "edge-paint"
  | "webbing"
  | "cord";

/** Rules of the trade for a cut width. */
export type RuleCode =
  | "fourfold"
  | "three"
  | "two-layer"
  | "sewn-turned"
  | "tube"
  | "bonded"
  | "webbing-overlay"
  | "webbing-sleeve"
  | "webbing-cover"
  | "corded";

/** What a maker can say that a strap may have no use for. */
export type ChoiceWord =
  | keyof FoldChoices
  | "adjustment"
  | "shortPart"
  | "endStyle"
  | "endThickness"
  | "opening"
  | "fixedBar"
  | "hardwareLength"
  | "edgeFinish"
  | "fromEdge"
  | "extraRows"
  | "stitchLength"
  | "tradeCut"
  | "ruler";

/** Places under the needle. */
export type NeedlePlace = "along" | "doubled-ends" | "fold-back" | "tucked" | "straight-join" | "tab-ring";

/** Names of the pieces of a strap; its own name comes before them. */
export interface PartNames {
  readonly outer: string;
  readonly facing: string;
  readonly interfacing: string;
  readonly padding: string;
  readonly shortPart: string;
  readonly longPart: string;
  readonly lengthOf: (number: number, of: number) => string;
}

/** Lines along a strip. */
export type LineWord = LineNote | PieceLine["role"];

/** What a colour of the section's picture stands for. */
export type LayerWord = PlyRole | "own-facing";

/** Words on the pictures of a strap. */
export interface PictureWords {
  readonly cutWidth: (size: string) => string;
  readonly cutLength: (size: string) => string;
  /** How a strip lies there; `percent` of its width, null when true. */
  readonly flat: (percent: number | null) => string;
  readonly magnified: (times: number, cut: string) => string;
  readonly rawEdgeHeld: (by: string) => string;
  readonly edgesSkived: (to: string) => string;
  readonly hemHeld: (by: string) => string;
  readonly rawEdge: string;
  readonly stitch: string;
  readonly layers: Readonly<Record<LayerWord, string>>;
  /** What the line across the strip marks; of two ends alike once. */
  readonly endMarks: (ends: readonly string[]) => string;
  readonly threading: ThreadingWords;
}

/** How an adjustable strap is threaded. */
export interface ThreadingWords {
  readonly title: string;
  readonly steps: readonly [loop: string, ring: string, slider: string, own: string];
  readonly slider: string;
  readonly ring: string;
  readonly clasp: string;
  readonly worn: (longest: string, shortest: string) => string;
}

/** Hardware to have ready, for the shopping list. */
export interface HardwareWords {
  readonly names: Readonly<Record<"ring" | "slider" | "clasp", (count: number) => string>>;
  readonly inside: (what: string, inner: string) => string;
  readonly opening: (what: string, opening: string) => string;
  /** Where the maker has named none. */
  readonly unnamed: (what: string) => string;
}

/** What a construction is called everywhere. */
export interface ConstructionWords {
  /** As in "it is …": begins small unless it is a German noun. */
  readonly name: string;
  /** Its layer count in words. */
  readonly layers: string;
}

/** All words about straps in one language; a language that lacks one does not compile. */
export interface SpokenStraps {
  readonly phrases: Readonly<Record<PhraseCode, string>>;
  readonly constructions: Readonly<Record<ConstructionId, ConstructionWords>>;
  readonly rules: Readonly<Record<RuleCode, string>>;
  readonly choices: Readonly<Record<ChoiceWord, string>>;
  /** What a strap would have to be to use it, where that is not another construction alone. */
  readonly choiceNeeds: Readonly<Partial<Record<ChoiceWord, string>>>;
  readonly lengthItems: Readonly<Record<LengthItemCode, string>>;
  readonly consumables: Readonly<Record<ConsumableCode, string>>;
  /** Straps of common bags, and where their measures come from. */
  readonly presets: Readonly<Record<PresetId, string>>;
  readonly presetNote: string;
  readonly hardware: HardwareWords;
  readonly sewnWith: (needle: string, thread: string | undefined) => string;
  readonly needle: Readonly<Record<NeedlePlace, string>>;
  readonly parts: PartNames;
  readonly lineAt: (line: LineWord, at: string) => string;
  readonly picture: PictureWords;
  /** Below the picture of a strip; `part` is empty for the only one. */
  readonly laidFlat: (part: string) => string;
}

/** The same, and the tag of the language itself for the decimal sign of lengths. */
export interface StrapWords extends SpokenStraps {
  readonly language: string;
}

/** A construction's name with its layer count, so that folds in three and in four cannot be mistaken. */
export function constructionTitle({ name, layers }: ConstructionWords): string {
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} (${layers})`;
}

/** A kind of hardware, as many as there are of it: "rings, 39 mm wide inside". */
export function hardwareName(
  { kind, count, innerWidth, opening, named }: HardwareNeeded,
  { hardware }: StrapWords,
  write: (mm: number) => string,
): string {
  const wide = hardware.inside(hardware.names[kind](count), write(innerWidth));
  const full = opening === null ? wide : hardware.opening(wide, write(opening));
  return named ? full : hardware.unnamed(full);
}

/** The same with how many: "2 rings, 39 mm wide inside". */
export function hardwareText(one: HardwareNeeded, words: StrapWords, write: (mm: number) => string): string {
  return `${one.count} ${hardwareName(one, words, write)}`;
}

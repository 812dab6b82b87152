import type { PlainCautionCode } from "../../materials/caution.ts";
import type { MaterialKind } from "../../materials/material.ts";
import type { Phrase } from "../../words/phrase.ts";
import type { RuleCode } from "../../words/strapWords.ts";
import type { AcrossPlan, Ply, SectionPlan } from "../section/foldPlan.ts";
import { foldLinesOf, type SolvedSection } from "../section/foldSection.ts";
import { turnedThickness } from "../section/skiving.ts";
import type { ConstructionId, EndStyle, FoldChoices } from "../wish/strapWish.ts";

/** Everything a construction needs to lay out its section. mm. */
export interface SectionInput {
  readonly outer: Ply;
  /** The outer strip's own material where the maker names no other. */
  readonly facing: Ply;
  readonly ownFacing: boolean;
  /** How far raw edges keep out of a bend: 0 … 1. */
  readonly clearance: number;
  /** Thickness of padding as pressed in the strap; null when there is none. */
  readonly padding: number | null;
  readonly webbingThickness: number;
  readonly choices: FoldChoices;
}

/** The same before the construction has its say; a null clearance leaves it to the construction. */
export type OpenSectionInput = Omit<SectionInput, "clearance"> & { readonly clearance: number | null };

/** A seam or topstitch that runs along the whole strap. mm. */
export interface StitchRow {
  readonly kind: "topstitch" | "construction";
  /** `mm` in from this side of the finished strap (seams of turned straps: from the strip's own raw edge). */
  readonly from: "left" | "right";
  readonly mm: number;
}

/** Facts a construction's order of work is written from. */
export interface StepFacts {
  readonly outerKind: MaterialKind;
  /** Null when the maker says nothing about raw edges. */
  readonly edgeFinish: "as-cut" | "paint" | "burnish" | null;
  readonly padded: boolean;
  readonly choices: FoldChoices;
  /** How much of the flat ends is doubled back, mm; null when they are finished in another way. */
  readonly doubledEnd: number | null;
  /** mm. */
  readonly finishedWidth: number;
  readonly setback: number;
  readonly topstitch: number;
}

/** What a strap can be made of besides its outer strip and interfacing. */
export type ExtraRole = "facing" | "padding" | "webbing" | "cord";

/** An allowance that is turned in, by the choice that says how much, mm. */
export interface TurnedEdge {
  readonly choice: "seamAllowance" | "turn" | "hem";
  readonly usual: number;
}

/** One way to build a strap: all that it is, as data and hooks for the solver. One file each; its words are in `words/`. */
export interface Construction {
  readonly id: ConstructionId;
  /** Layers of cloth where the strap is flat. */
  readonly layers: (choices: FoldChoices) => number;
  /** Numbers of layers that can be asked for in place of its own. */
  readonly layerChoices: readonly number[];
  /** Thickest single layer that can be folded this way by hand, mm (from memory). */
  readonly thickestLayer: number;
  readonly roles: Readonly<Partial<Record<ExtraRole, "needed" | "optional">>>;
  /** Offered in place of another construction when nothing but cloth is to be bought. */
  readonly offered: boolean;
  /** How far raw edges keep out of a bend where nobody says (0 … 1); null where none lies in one. */
  readonly defaultClearance: number | null;
  /** The construction whose fold test tells this one's clearance; null where none does. */
  readonly testedAs: "three-raw" | "fourfold" | null;
  /** Raw edges that stay visible along the strap. */
  readonly visibleEdges: (choices: FoldChoices) => number;
  /** Runs of double-sided tape, as multiples of the strap's length. */
  readonly tapeRuns: (choices: FoldChoices) => number;
  /** The strip that is interfaced; null where there is no place for any. */
  readonly interfaced: "outer" | "facing" | null;
  /** Choices about the folds that this construction heeds; others are left out, and the maker is told. */
  readonly heeds: (choices: FoldChoices) => readonly (keyof FoldChoices)[];
  /** The edge that is turned in or under, and how much of it where the maker does not say, mm; null where none is. */
  readonly turnedEdge: (choices: FoldChoices) => TurnedEdge | null;
  /** Sewn inside out and pulled right side out. */
  readonly pulledThrough: boolean;
  /** A narrow one of cloth may be cut on the bias by hand: it carries nothing and turns more easily. */
  readonly mayLieOnBias: boolean;
  /** Sewn longer by this share of its length and trimmed. */
  readonly lengthSpare: number;
  /** The trade's rule for its cut width. */
  readonly rule: (choices: FoldChoices) => RuleCode;
  /** Padding is cut this much narrower than the strap, mm. */
  readonly paddingShy: number;
  /** How the ends are finished where neither the maker nor an adjustment says; null: as the length is measured. */
  readonly usualEnd: EndStyle | null;
  /** Folded over a ring in the middle of its length, in two legs. */
  readonly overRing: boolean;
  /** Null for a strip wrapped round its cord: it is a ring, not a stack. See `wrappedSection.ts`. */
  readonly plan: ((input: SectionInput) => SectionPlan) | null;
  /** Finished width that a bought webbing gives, mm. */
  readonly widthOnWebbing: (webbing: number, layer: number) => number;
  /** Least distance of raw edges from the centre crease before they run into the fold, mm; null where there is none. */
  readonly leastEdgeGap: ((outer: Ply) => number) | null;
  /** Cut off each long edge again after bonding, mm. */
  readonly trim: (choices: FoldChoices) => number;
  /** How far raw edges are held back, from the solved section; see `StrapResult.setback`. */
  readonly setback: (section: SolvedSection) => number;
  /** What is held back by the setback. */
  readonly heldEdge: "raw" | "hem";
  /** Rows needed to hold the strap together; topstitch rows at `fromEdge`. */
  readonly rows: (choices: FoldChoices, fromEdge: number, setback: number) => readonly StitchRow[];
  /** The order of work once the pieces are cut, joined and interfaced. */
  readonly steps: (facts: StepFacts) => readonly Phrase[];
  /** Cautions of this construction alone; those of the materials come on top. */
  readonly cautions: readonly PlainCautionCode[];
}

type Common = Omit<Construction, "id" | "layers" | "thickestLayer" | "plan" | "rows" | "steps" | "heeds" | "rule">;

/** What most constructions have in common: each file says what is its own. */
export const PLAIN: Common = {
  layerChoices: [],
  roles: {},
  offered: true,
  defaultClearance: null,
  testedAs: null,
  visibleEdges: () => 0,
  tapeRuns: () => 0,
  interfaced: "outer",
  turnedEdge: () => null,
  pulledThrough: false,
  mayLieOnBias: false,
  lengthSpare: 0,
  paddingShy: 0,
  usualEnd: null,
  overRing: false,
  widthOnWebbing: (webbing: number) => webbing,
  leastEdgeGap: null,
  trim: () => 0,
  setback: () => 0,
  heldEdge: "raw",
  cautions: [],
};

/** The plan of a folded construction, with its own clearance where nobody says. Throws on a wrapped one. */
export function planOf(construction: Construction, input: OpenSectionInput): SectionPlan {
  if (construction.plan === null) throw new TypeError(`${construction.id}: wrapped round its cord, it has no plan`);
  return construction.plan({ ...input, clearance: input.clearance ?? construction.defaultClearance ?? 0 });
}

/** Common practice, no source: trade figures in mm used where the maker says nothing. */
export const TRADE = {
  /** 1/8 in. */
  topstitchFromEdge: 3.175,
  tapeFromEdge: 3.175,
  seamAllowance: 6.35,
  /** Shown of the outer strip on each side of a facing. */
  reveal: 3.175,
  hem: 6.35,
  hemSetback: 3.175,
  overlayMargin: 3,
  overlayTurn: 8,
  /** Edges of a single cover round a webbing. */
  coverTurn: 6.35,
  /** Padding is cut a shade narrower than the strap. */
  paddingShy: 1.5,
} as const;

/**
 * Where the raw edge of a seam allowance lies, from the outside of its fold: `allowance` beyond the stitch in the fold.
 * A skived one also loses half the step it climbs.
 */
export function allowanceEdge(allowance: number, ply: Ply, choices: FoldChoices): number {
  const thickness = turnedThickness(ply, choices);
  const radius = ply.thickness > 0 ? (ply.leastRadius * thickness) / ply.thickness : ply.leastRadius;
  const bend = (Math.PI / 2) * (radius + ply.neutral * thickness);
  return radius + thickness + allowance - bend - (ply.thickness - thickness) / 2;
}

/** Topstitch along both long edges. */
export function bothEdges(fromEdge: number): readonly StitchRow[] {
  return [
    { kind: "topstitch", from: "left", mm: fromEdge },
    { kind: "topstitch", from: "right", mm: fromEdge },
  ];
}

/** Distance of the first raw edge from the next-but-one fold line once it is folded over, measured in the flat. */
export function edgeToSecondFold(section: SolvedSection): number {
  const [first, second] = foldLinesOf(section.strips[0]!);
  return second! - 2 * first!;
}

/** Half the gap between two raw edges that meet in the middle. */
export function halfMiddleGap(section: SolvedSection): number {
  return section.strips[0]!.plan.end.mm;
}

/** Outsides of a left and a right fold that both stay `inset` inside the strap. */
export function insideBoth(inset: number): readonly AcrossPlan[] {
  return [
    { from: "left", mm: inset },
    { from: "right", mm: inset },
  ];
}

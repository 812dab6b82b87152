import type { PlainCautionCode } from "../../materials/cautions/caution.ts";
import type { MaterialKind } from "../../materials/material.ts";
import type { AcrossPlan, Ply, SectionPlan } from "../section/foldPlan.ts";
import { foldLinesOf, type SolvedSection } from "../section/foldSection.ts";
import type { ConstructionId, FoldChoices } from "../wish/strapWish.ts";
import type { Phrase } from "../words/phrase.ts";

/** Everything a construction needs to lay out its section. mm. */
export interface SectionInput {
  readonly outer: Ply;
  /** The outer strip's own material where the maker names no other. */
  readonly facing: Ply;
  readonly ownFacing: boolean;
  /** How far raw edges keep out of a bend (0 … 1); null leaves it to the construction. */
  readonly clearance: number | null;
  /** Thickness of padding as pressed in the strap; null when there is none. */
  readonly padding: number | null;
  readonly webbingThickness: number;
  readonly choices: FoldChoices;
}

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
  readonly facingKind: MaterialKind;
  readonly interfacing: "none" | "full" | "reduced" | "quarter";
  readonly padded: boolean;
  readonly choices: FoldChoices;
  /** mm. */
  readonly cutWidth: number;
  readonly finishedWidth: number;
  readonly setback: number;
  readonly topstitch: number;
}

/** Which materials beyond the outer one a construction uses. */
type ExtraRole = "facing" | "padding" | "webbing" | "cord";

/** One way to build a strap: data for the solver, and the order of work. One file each; its words are in `words/`. */
export interface Construction {
  readonly id: ConstructionId;
  /** Layers of cloth where the strap is flat. */
  readonly layers: (choices: FoldChoices) => number;
  /** Thickest single layer that can be folded this way by hand, mm (from memory). */
  readonly thickestLayer: number;
  readonly needs: readonly ExtraRole[];
  readonly allows: readonly ExtraRole[];
  /** Raw edges that stay visible along the strap. */
  readonly visibleEdges: (choices: FoldChoices) => number;
  /** Runs of double-sided tape, as multiples of the strap's length. */
  readonly tapeRuns: number;
  readonly plan: (input: SectionInput) => SectionPlan;
  /** Cut off each long edge again after bonding, mm. */
  readonly trim: (choices: FoldChoices) => number;
  /** How far raw edges are held back, from the solved section; see `StrapResult.setback`. */
  readonly setback: (section: SolvedSection) => number;
  /** Rows needed to hold the strap together; topstitch rows at `fromEdge`. */
  readonly rows: (choices: FoldChoices, fromEdge: number, setback: number) => readonly StitchRow[];
  readonly steps: (facts: StepFacts) => readonly Phrase[];
  /** Cautions of this construction alone; those of the materials come on top. */
  readonly cautions: readonly PlainCautionCode[];
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

/** Where the raw edge of a seam allowance lies, from the outside of its fold: `allowance` beyond the stitch in the fold. */
export function allowanceEdge(allowance: number, ply: Ply): number {
  const radius = ply.leastRadius;
  return radius + ply.thickness + allowance - (Math.PI / 2) * (radius + ply.neutral * ply.thickness);
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

/** For constructions whose raw edges are not held back from anything. */
export function noSetback(): number {
  return 0;
}

/** Outsides of a left and a right fold that both stay `inset` inside the strap. */
export function insideBoth(inset: number): readonly AcrossPlan[] {
  return [
    { from: "left", mm: inset },
    { from: "right", mm: inset },
  ];
}

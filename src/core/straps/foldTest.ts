import { failed, ok, type Result } from "../problems/problem.ts";
import { CONSTRUCTIONS } from "./constructions/catalogue.ts";
import { planOf, type SectionInput } from "./constructions/construction.ts";
import type { Ply } from "./section/foldPlan.ts";
import { finishedWidthOfCut, sectionAtFinishedWidth } from "./section/foldSection.ts";
import type { FoldChoices } from "./wish/strapWish.ts";

/** Constructions whose width and raw edge tell both K and clearance. */
export const FOLD_TESTS = ["three-raw", "fourfold"] as const;

export type FoldTestId = (typeof FOLD_TESTS)[number];

/** What was folded and what was read off it. mm. */
export interface FoldReading {
  readonly construction: FoldTestId;
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

/** Fold traits fitted to one strip, each with the uncertainty that the readings allow. */
export interface FoldFit {
  readonly neutral: number;
  readonly neutralError: number;
  readonly clearance: number;
  readonly clearanceError: number;
  /** What the readings' error means for the cut width of any strap of this construction, mm. */
  readonly cutWidthError: number;
}

const FLAT: FoldChoices = {};

function predicted(reading: FoldReading, neutral: number, clearance: number): readonly [number, number] {
  const construction = CONSTRUCTIONS[reading.construction];
  const ply: Ply = { role: "outer", thickness: reading.thickness, neutral, leastRadius: 0 };
  const input: SectionInput = {
    outer: ply,
    facing: ply,
    ownFacing: false,
    clearance,
    padding: null,
    webbingThickness: 0,
    choices: FLAT,
  };
  const plan = planOf(construction, input);
  const width = finishedWidthOfCut(plan, reading.cutWidth);
  return [width, construction.setback(sectionAtFinishedWidth(plan, width))];
}

/** Size to expect of a test strip with the traits assumed: finished width and setback, mm. */
export function expectedFold(
  construction: FoldTestId,
  thickness: number,
  cutWidth: number,
  traits: { readonly neutral: number; readonly clearance: number },
): { readonly finishedWidth: number; readonly setback: number } {
  const reading = { construction, thickness, cutWidth, finishedWidth: 0, setback: 0, readingError: 0 };
  const [finishedWidth, setback] = predicted(reading, traits.neutral, traits.clearance);
  return { finishedWidth, setback };
}

/**
 * K and clearance from one folded strip. Width and setback are both linear in K and clearance, so two readings
 * give two equations; the errors follow from the same matrix (readings independent, root of the sum of squares).
 *
 * Errors: `strap-fold-test-unreadable` when the readings, with their error, allow no K between 0 and 1.
 */
export function fitFold(reading: FoldReading, path = ""): Result<FoldFit> {
  const base = predicted(reading, 0, 0);
  const byNeutral = predicted(reading, 1, 0);
  const byClearance = predicted(reading, 0, 1);
  const a = byNeutral[0] - base[0];
  const b = byClearance[0] - base[0];
  const c = byNeutral[1] - base[1];
  const d = byClearance[1] - base[1];
  const determinant = a * d - b * c;
  const width = reading.finishedWidth - base[0];
  const setback = reading.setback - base[1];
  const neutral = (d * width - b * setback) / determinant;
  const clearance = (a * setback - c * width) / determinant;
  const error = reading.readingError / Math.abs(determinant);
  const neutralError = error * Math.hypot(d, b);
  const clearanceError = error * Math.hypot(a, c);
  const readable = neutral + neutralError >= 0 && neutral - neutralError <= 1;
  if (!readable || !Number.isFinite(neutral + clearance)) {
    return failed({ code: "strap-fold-test-unreadable", path, neutral, clearance });
  }
  return ok({
    neutral: Math.min(1, Math.max(0, neutral)),
    neutralError,
    clearance: Math.min(1, Math.max(0, clearance)),
    clearanceError,
    // One reading moved by its error moves the width of the same strip by as much; slope of cut to finished on top.
    cutWidthError: reading.readingError * CONSTRUCTIONS[reading.construction].layers(FLAT),
  });
}

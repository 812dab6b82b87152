import type { FoldReading, FoldTraits } from "../materials/material.ts";
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
export type FoldTestReading = FoldReading<FoldTestId>;

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

function predicted(reading: FoldTestReading, neutral: number, clearance: number): readonly [number, number] {
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
export function fitFold(reading: FoldTestReading, path = ""): Result<FoldFit> {
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

/** A trait as measured, with its uncertainty. */
export interface Measured {
  readonly value: number;
  readonly error: number;
}

/** What all tests of one material say together; K belongs to the material, clearance to a construction as well. */
export interface MeasuredFold {
  readonly neutral: Measured | null;
  readonly clearance: Readonly<Partial<Record<FoldTestId, Measured>>>;
}

/** K and clearance lie between 0 and 1: with an error of half of that a test says nothing about them. */
const SAYS_NOTHING = 0.5;

/** Whether a fit says anything at all, of K or of clearance. */
export function saysSomething({ neutralError, clearanceError }: FoldFit): boolean {
  return Math.min(neutralError, clearanceError) < SAYS_NOTHING;
}

/** Mean of independent measurements, each weighed by the inverse square of its error; null when none says anything. */
function meanOf(all: readonly Measured[]): Measured | null {
  const told = all.filter(({ error }) => error < SAYS_NOTHING);
  if (told.length === 0) return null;
  // An error of nothing would outweigh every other test: nobody reads better than a hundredth.
  const weights = told.map(({ error }) => 1 / Math.max(error, 0.01) ** 2);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const value = told.reduce((total, one, i) => total + weights[i]! * one.value, 0) / sum;
  return { value, error: 1 / Math.sqrt(sum) };
}

/** What the tests kept with a material say together. Tests that cannot be read say nothing. */
export function measuredFold({ tests = [] }: FoldTraits): MeasuredFold {
  const fits = tests.flatMap((reading) => {
    const construction = FOLD_TESTS.find((id) => id === reading.construction);
    const fit = construction && fitFold({ ...reading, construction });
    return construction && fit?.ok ? [{ construction, fit: fit.value }] : [];
  });
  const clearance: Partial<Record<FoldTestId, Measured>> = {};
  for (const id of FOLD_TESTS) {
    const own = fits.filter((one) => one.construction === id);
    const mean = meanOf(own.map(({ fit }) => ({ value: fit.clearance, error: fit.clearanceError })));
    if (mean !== null) clearance[id] = mean;
  }
  return { neutral: meanOf(fits.map(({ fit }) => ({ value: fit.neutral, error: fit.neutralError }))), clearance };
}

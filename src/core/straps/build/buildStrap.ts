import { inchStepOf } from "../../materials/material.ts";
import { failed, ok, type Result } from "../../problems/problem.ts";
import { type Phrase, phrase } from "../../words/phrase.ts";
import type { PartNames } from "../../words/strapWords.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import type { StepFacts } from "../constructions/construction.ts";
import { cutStep, interfaceStep } from "../constructions/stepPhrases.ts";
import { thicknessProfile } from "../section/thicknessProfile.ts";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { cautionsOf } from "./cautions.ts";
import { consumablesOf } from "./consumables.ts";
import { stepsAfterClosing, stepsBeforeFolding, tabWarnings } from "./endSteps.ts";
import { hardwareNeeded } from "./hardwareNeeded.ts";
import { joinStrips } from "./joinStrips.ts";
import { alternativesTo, HARDWARE_TOLERANCE, limitsOf, needleChecks, passes, rollLengthFor } from "./limits.ts";
import { type ResolvedWish, resolveWish } from "./resolveWish.ts";
import { type SolvedWidths, solveWidths } from "./solveStrap.ts";
import { type StitchRows, stitchRows } from "./stitchRows.ts";
import { endsOf, type StrapEnd, strapLengths } from "./strapLengths.ts";
import { type StripLength, strapPieces } from "./strapPieces.ts";
import type { StrapResult } from "./strapResult.ts";
import { thicknessAlong } from "./thicknessAlong.ts";
import { warningsOf } from "./warnings.ts";

function stepFacts(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  topstitch: number,
  ends: readonly [StrapEnd, StrapEnd],
): StepFacts {
  const { wish, materials, choices } = resolved;
  return {
    outerKind: materials.outer.kind,
    edgeFinish: wish.edgeFinish ?? null,
    doubledEnd: ends.find((end) => end.style === "doubled")?.allowance ?? null,
    padded: materials.padding !== undefined,
    choices,
    finishedWidth: widths.finished,
    setback: widths.setback,
    topstitch,
  };
}

/** The steps with further rows of stitching after the row that closes the strap. */
function withFurtherRows(steps: readonly Phrase[], { apart }: StitchRows, rows: number): readonly Phrase[] {
  if (apart === null) return steps;
  const closing = steps.findLastIndex(({ parts }) =>
    parts.some((part) => part.startsWith("from-the-edge") || part === "three-topstitch"),
  );
  const further = { ...phrase("extra-rows", { apart }), counts: { rows } };
  return [...steps.slice(0, closing + 1), further, ...steps.slice(closing + 1)];
}

/** Roll length for all strips of the outer material, each length side by side; null when no width is known. */
function rollLengthOf(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  lengths: readonly StripLength[],
): number | null {
  const usable = resolved.materials.outer.usableWidth;
  if (usable === undefined) return null;
  const strips =
    widths.section.kind === "wrapped"
      ? 1
      : widths.section.strips.filter(
          (one) => one.plan.ply.role === "outer" || resolved.materials.facing === undefined,
        ).length;
  const each = lengths.map(({ mm }) => rollLengthFor(resolved.wish.count * strips, widths.cut, mm, usable));
  return each.some((mm) => mm === null) ? null : each.reduce<number>((sum, mm) => sum + mm!, 0);
}

/** A ring, slider or clasp that the strap cannot pass. */
function narrowHardware({ wish, path }: ResolvedWish, finished: number): Result<null> {
  const problems = (wish.hardware ?? []).flatMap((one, i) =>
    finished - one.innerWidth > HARDWARE_TOLERANCE
      ? [
          {
            code: "strap-hardware-narrow" as const,
            path: `${path}hardware[${i}].innerWidth`,
            kind: one.kind,
            innerMm: one.innerWidth,
            widthMm: finished,
            leastMm: finished - HARDWARE_TOLERANCE,
          },
        ]
      : [],
  );
  return problems.length === 0 ? ok(null) : failed(...problems);
}

/**
 * Works a strap out from its wish: section, cut sizes, lengths, pieces, consumables, limits, order of work.
 *
 * Shapes: `materials` must hold every material the wish names; `path` (with its dot, `straps[1].`) is put before the place of each problem;
 *         `names` are what its pieces are called, in the maker's language.
 * Units:  mm.
 * Errors: every problem of the wish at once where they do not hide each other; warnings never stop a strap.
 * Cost:   well under a millisecond.
 */
export function buildStrap(
  wish: StrapWish,
  materials: readonly StrapMaterial[],
  path = "",
  names: PartNames = STRAP_WORDS.en.parts,
): Result<StrapResult> {
  const resolving = resolveWish(wish, materials, path);
  if (!resolving.ok) return resolving;
  const resolved = resolving.value;
  const ends = endsOf(resolved);
  const solving = solveWidths(resolved);
  const measuring = strapLengths(resolved, ends);
  if (!solving.ok || !measuring.ok) {
    return failed(...(solving.ok ? [] : solving.problems), ...(measuring.ok ? [] : measuring.problems));
  }
  const widths = solving.value;
  const lengths = measuring.value;
  const hardware = narrowHardware(resolved, widths.finished);
  if (!hardware.ok) return hardware;
  const { construction, choices } = resolved;
  const stitching = stitchRows(resolved, widths);
  if (!stitching.ok) return stitching;
  const { rows, fromEdge } = stitching.value;
  const strips = joinStrips(resolved, widths.cut, lengths, ends, names);
  const needle = needleChecks(
    widths.section,
    ends,
    [
      ...(strips.joined && strips.seam === "straight" ? ["straight-join" as const] : []),
      ...(construction.overRing ? ["tab-ring" as const] : []),
    ],
    wish.endThickness,
  );
  const fits = passes(limitsOf(resolved), needle, widths.thickness);
  const folding = construction.steps(stepFacts(resolved, widths, fromEdge, ends));
  const placement = wish.interfacing ?? "none";
  const { kind } = resolved.materials.outer;
  return ok({
    wish,
    inches: inchStepOf(kind),
    pieces: strapPieces(resolved, widths, strips.lengths, rows, names),
    nominalWidth: widths.nominal,
    cutWidth: widths.cut,
    finishedWidth: widths.finished,
    layers: construction.layers(choices),
    thickness: widths.thickness,
    foldLines: widths.foldLines,
    setback: widths.setback,
    section: widths.section,
    rows,
    lengths,
    rollLength: rollLengthOf(resolved, widths, strips.lengths),
    across: widths.section.kind === "layered" ? thicknessProfile(widths.section) : null,
    along: thicknessAlong(lengths.finished, ends, needle[0]!, wish.endThickness),
    needle,
    consumables: consumablesOf(resolved, widths, lengths, ends, rows),
    hardware: hardwareNeeded(resolved, widths, ends),
    sewnWith: wish.machine?.needles?.find((one) => one.kind === kind) ?? null,
    alternatives: fits ? [] : alternativesTo(resolved, widths.finished, lengths.cut, ends),
    warnings: [
      ...warningsOf(resolved, widths, needle, lengths),
      ...tabWarnings(resolved, widths, lengths),
      ...strips.warnings,
    ],
    steps: [
      cutStep(construction, kind, widths.cut),
      ...(strips.joined ? [phrase(strips.step)] : []),
      ...(placement === "none" ? [] : [interfaceStep(construction, placement, kind)]),
      ...stepsBeforeFolding(ends, wish),
      ...withFurtherRows(folding, stitching.value, wish.stitch?.extraRows ?? 0),
      ...stepsAfterClosing(resolved, widths, lengths, ends),
    ],
    cautions: cautionsOf(resolved, needle),
  });
}

import { failed, ok, type Result } from "../../problems/problem.ts";
import { phrase } from "../../words/phrase.ts";
import type { PartNames } from "../../words/strapWords.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import { type StepFacts, TRADE } from "../constructions/construction.ts";
import { thicknessProfile } from "../section/thicknessProfile.ts";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { cautionsOf } from "./cautions.ts";
import { consumablesOf } from "./consumables.ts";
import { stepsAfterClosing, stepsBeforeFolding, tabWarnings } from "./endSteps.ts";
import { joinStrips } from "./joinStrips.ts";
import { alternativesTo, HARDWARE_TOLERANCE, limitsOf, needleChecks, passes } from "./limits.ts";
import { type ResolvedWish, resolveWish } from "./resolveWish.ts";
import { type SolvedWidths, solveWidths } from "./solveStrap.ts";
import { endsOf, strapLengths } from "./strapLengths.ts";
import { strapPieces } from "./strapPieces.ts";
import type { StrapResult } from "./strapResult.ts";
import { thicknessAlong } from "./thicknessAlong.ts";
import { warningsOf } from "./warnings.ts";

function stepFacts(resolved: ResolvedWish, widths: SolvedWidths): StepFacts {
  const { wish, materials, choices } = resolved;
  return {
    outerKind: materials.outer.kind,
    facingKind: materials.facing?.kind ?? materials.outer.kind,
    interfacing: wish.interfacing ?? "none",
    padded: materials.padding !== undefined,
    choices,
    cutWidth: widths.cut,
    finishedWidth: widths.finished,
    setback: widths.setback,
    topstitch: wish.stitch?.fromEdge ?? TRADE.topstitchFromEdge,
  };
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
  const fromEdge = wish.stitch?.fromEdge ?? TRADE.topstitchFromEdge;
  const rows = construction.rows(choices, fromEdge, widths.setback);
  const strips = joinStrips(resolved, widths.cut, lengths, ends, names);
  const needle = needleChecks(widths.section, ends, [
    ...(strips.joined && strips.seam === "straight" ? ["straight-join" as const] : []),
    ...(construction.overRing ? ["tab-ring" as const] : []),
  ]);
  const fits = passes(limitsOf(resolved), needle, widths.thickness);
  // The first step of every construction is the cutting; joins and turned ends come before anything is folded.
  const [cut, ...folding] = construction.steps(stepFacts(resolved, widths));
  return ok({
    wish,
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
    across: widths.section.kind === "layered" ? thicknessProfile(widths.section) : null,
    along: thicknessAlong(lengths.finished, ends, needle[0]!),
    needle,
    consumables: consumablesOf(resolved, widths, lengths, ends, rows),
    alternatives: fits ? [] : alternativesTo(resolved, widths.finished, lengths.cut, ends),
    warnings: [
      ...warningsOf(resolved, widths, needle),
      ...tabWarnings(resolved, widths, lengths),
      ...strips.warnings,
    ],
    steps: [
      cut!,
      ...(strips.joined ? [phrase(strips.step)] : []),
      ...stepsBeforeFolding(ends),
      ...folding,
      ...stepsAfterClosing(resolved, widths, lengths, ends),
    ],
    cautions: cautionsOf(resolved, widths),
  });
}

import type { NeedlePlace } from "../../words/strapWords.ts";
import { CLOTH_CONSTRUCTIONS, CONSTRUCTIONS } from "../constructions/catalogue.ts";
import { type Construction, planOf } from "../constructions/construction.ts";
import { edgesFit } from "../section/edgesFit.ts";
import { leastWidth, sectionAtFinishedWidth } from "../section/foldSection.ts";
import { thickestSpan } from "../section/thicknessProfile.ts";
import { clearanceOf, type ResolvedWish } from "./resolveWish.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { Alternative, NeedleCheck, StrapSection } from "./strapResult.ts";

/** Strap-to-hardware tolerance: a 38 mm ring takes 36 to 40 mm (common practice, no source), mm. */
export const HARDWARE_TOLERANCE = 2;
/** A slider's inner height should be at least this many times the strap's thickness (common practice, no source). */
export const SLIDER_FACTOR = 4;

/** Thickest place across the strap. */
function thickest(section: StrapSection): { layers: number; thickness: number } {
  if (section.kind === "layered") return thickestSpan(section);
  // Only the fin beside the cord goes under the needle.
  return { layers: 2, thickness: 2 * section.ply.thickness };
}

/** Thickness and layers under the needle along the strap, at doubled ends and wherever else it is doubled. mm. */
export function needleChecks(
  section: StrapSection,
  ends: readonly [StrapEnd, StrapEnd],
  doubledToo: readonly NeedlePlace[],
  endThickness: number | undefined = undefined,
): readonly NeedleCheck[] {
  const along = thickest(section);
  const end = Math.min(endThickness ?? along.thickness, along.thickness);
  const checks: NeedleCheck[] = [{ where: "along", ...along }];
  const doubles = ends.some((end) => end.style !== "raw" && end.style !== "seam");
  if (section.kind === "wrapped") {
    if (doubles) checks.push({ where: "doubled-ends", layers: 2, thickness: 2 * section.ply.thickness });
    return checks.map(({ where, layers, thickness }) => ({ where, layers, thickness }));
  }
  const stacked = (where: NeedlePlace, times: number): NeedleCheck => ({
    where,
    layers: times * along.layers,
    thickness: times * along.thickness,
  });
  const twice = (where: NeedlePlace): NeedleCheck => stacked(where, 2);
  // What lies on the strap there may be skived or trimmed; the strap itself is not.
  const onItself = (where: NeedlePlace, times: number): NeedleCheck => ({
    where,
    layers: times * along.layers,
    thickness: along.thickness + (times - 1) * end,
  });
  const back = ends.filter((one) => one.style === "fold-back");
  if (back.length > 0) checks.push(onItself("fold-back", back.some((one) => one.under > 0) ? 3 : 2));
  if (ends.some((one) => one.style === "tucked")) checks.push(onItself("tucked", 2));
  checks.push(...doubledToo.map(twice));
  return checks.map(({ where, layers, thickness }) => ({ where, layers, thickness }));
}

/** What a home machine sews slowly over a hump, where the maker does not say what hers takes (common practice, no source), mm. */
const HOME_MACHINE = 6.4;

/** Notes on a strap that a sewing machine does not take. */
export const OVER_MACHINE: ReadonlySet<string> = new Set(["home-machine", "machine-thickness", "machine-layers"]);

/** Limits a strap has to pass: the machine's at the needle, the slider's opening. mm; absent means no limit. */
export interface Limits {
  readonly thickness: number;
  readonly layers: number;
  readonly sliderOpening: number;
}

export function limitsOf({ wish }: ResolvedWish): Limits {
  const openings = (wish.hardware ?? []).map((one) => (one.kind === "slider" ? one.opening : undefined));
  const known = openings.filter((opening) => opening !== undefined);
  return {
    thickness: Math.min(
      wish.machine?.maxThickness ?? wish.machine?.footLift ?? HOME_MACHINE,
      wish.machine?.footLift ?? Number.POSITIVE_INFINITY,
    ),
    layers: wish.machine?.maxLayers ?? Number.POSITIVE_INFINITY,
    sliderOpening: known.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...known),
  };
}

/** Whether a strap passes: every place under the needle, and four times its thickness through the slider. */
export function passes(limits: Limits, needle: readonly NeedleCheck[], thickness: number): boolean {
  const sewn = needle.every((check) => check.thickness <= limits.thickness && check.layers <= limits.layers);
  return sewn && SLIDER_FACTOR * thickness <= limits.sliderOpening;
}

/** Roll length for `count` strips side by side, whichever of along and across the roll needs less, mm. */
export function rollLengthFor(count: number, width: number, length: number, usable: number): number | null {
  const needed = (across: number, along: number): number => {
    const side = Math.floor((usable + 1e-6) / across);
    return side < 1 ? Number.POSITIVE_INFINITY : Math.ceil(count / side) * along;
  };
  const least = Math.min(needed(width, length), needed(length, width));
  return Number.isFinite(least) ? least : null;
}

function tryConstruction(
  other: Construction,
  resolved: ResolvedWish,
  finished: number,
  cutLength: number,
  ends: readonly [StrapEnd, StrapEnd],
): (Alternative & { readonly needle: readonly NeedleCheck[] }) | null {
  const { input, materials, wish } = resolved;
  // A raw edge of woven cloth frays: what the notes warn of is not offered beside them.
  if (materials.outer.kind === "woven" && other.visibleEdges({}) > 0) return null;
  if (input.outer.thickness > other.thickestLayer) return null;
  const plan = planOf(other, {
    ...input,
    clearance: clearanceOf(other, materials.outer, {}),
    choices: {},
    padding: null,
    facing: input.outer,
  });
  if (finished < leastWidth(plan)) return null;
  const section = sectionAtFinishedWidth(plan, finished);
  if (!edgesFit(section)) return null;
  const usable = materials.outer.usableWidth;
  const strips = section.strips.length;
  const cutWidth = Math.max(...section.strips.map((one) => one.width));
  const needle = needleChecks(section, ends, []);
  return {
    construction: other.id,
    cutWidth,
    layers: other.layers({}),
    thickness: needle[0]!.thickness,
    rollLength: usable === undefined ? null : rollLengthFor(wish.count * strips, cutWidth, cutLength, usable),
    needle,
  };
}

/** Constructions of the same material and width that pass the limits, those needing least cloth first, then the thinner. */
export function alternativesTo(
  resolved: ResolvedWish,
  finished: number,
  cutLength: number,
  ends: readonly [StrapEnd, StrapEnd],
): readonly Alternative[] {
  const limits = limitsOf(resolved);
  const cloth = (one: Alternative): number => one.rollLength ?? one.cutWidth;
  return CLOTH_CONSTRUCTIONS.filter((id) => id !== resolved.construction.id)
    .map((id) => CONSTRUCTIONS[id])
    .map((other) => tryConstruction(other, resolved, finished, cutLength, ends))
    .filter((one) => one !== null)
    .filter((one) => passes(limits, one.needle, one.thickness))
    .map(({ needle: _, ...one }) => one)
    .sort((a, b) => cloth(a) - cloth(b) || a.thickness - b.thickness);
}

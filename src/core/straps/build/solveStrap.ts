import { failed, ok, type Problem, type Result } from "../../problems/problem.ts";
import { type Construction, type OpenSectionInput, planOf, TRADE } from "../constructions/construction.ts";
import { edgesFit } from "../section/edgesFit.ts";
import type { SectionPlan } from "../section/foldPlan.ts";
import { finishedWidthOfCut, foldLinesOf, leastWidth, sectionAtFinishedWidth } from "../section/foldSection.ts";
import { withoutThickness } from "../section/ply.ts";
import { withFaceInterfacing } from "../section/quarterInterfacing.ts";
import { thicknessProfile } from "../section/thicknessProfile.ts";
import { wrapOfCord, wrapOfCut } from "../section/wrappedSection.ts";
import type { FoldChoices } from "../wish/strapWish.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { StrapSection } from "./strapResult.ts";

/** A strap's section and the widths that follow from it. mm. */
export interface SolvedWidths {
  readonly section: StrapSection;
  /** Cut width of the outer strip by the trade's round rule: the same folds without thickness. */
  readonly nominal: number;
  /** What is cut, trimming included. */
  readonly cut: number;
  readonly finished: number;
  readonly setback: number;
  /** From the strip's lower edge. */
  readonly foldLines: readonly number[];
  /** Where the strap is flat. */
  readonly thickness: number;
}

/** More than this between the width asked for and the one a bought core gives is a conflict, mm. */
const CORE_TOLERANCE = 1;
/** Less cannot be turned (from memory), mm. */
const LEAST_TURNED = 2;
/** Wider than any strap, mm. */
const WIDEST = 4000;
/** Sums of cut lengths are exact only to rounding. */
const EPSILON = 1e-6;

function planOfWish(resolved: ResolvedWish): SectionPlan {
  const { construction, input } = resolved;
  const plan = planOf(construction, input);
  const interfacing = resolved.materials.interfacing;
  const onFace = resolved.wish.interfacing === "quarter" && interfacing;
  const onto = plan.strips.findIndex((strip) => strip.ply.role === construction.interfaced);
  return onFace ? withFaceInterfacing(plan, interfacing.thickness, onto) : plan;
}

/** Cut width of the outer strip by the trade's rule: no thickness of cloth, and padding does not count. */
function nominalWidth(construction: Construction, input: OpenSectionInput, finished: number): number {
  const [outer, facing] = [withoutThickness(input.outer), withoutThickness(input.facing)];
  const flat = { ...input, outer, facing, padding: null };
  // The rule of a webbing reckons with the webbing, not with the cloth round it.
  const width = finished - construction.widthOnWebbing(0, input.outer.thickness);
  const strip = sectionAtFinishedWidth(planOf(construction, flat), width).strips[0]!;
  return strip.width + 2 * construction.trim(input.choices);
}

/** Thickness over most of the width (of two equal shares the thinner). */
function flatThickness(section: StrapSection): number {
  if (section.kind === "wrapped") return section.finishedWidth;
  const shares = new Map<string, { width: number; thickness: number }>();
  for (const span of thicknessProfile(section)) {
    const key = `${span.layers}, ${span.thickness.toFixed(6)}`;
    const share = shares.get(key) ?? { width: 0, thickness: span.thickness };
    shares.set(key, { ...share, width: share.width + span.to - span.from });
  }
  const ranked = [...shares.values()].sort((a, b) => b.width - a.width || a.thickness - b.thickness);
  return ranked[0]?.thickness ?? 0;
}

/** Solves a corded handle: the cord sets the width, the cut width sets what is left for the seam. */
function solveCorded({ wish, path, input, choices }: ResolvedWish): Result<SolvedWidths> {
  const cord = wish.core!.cordDiameter!;
  const allowance = choices.seamAllowance ?? TRADE.seamAllowance;
  const cutBy = wish.width?.kind === "cut" ? wish.width.mm : null;
  const nominal = Math.PI * cord + 2 * allowance;
  const wanted = wrapOfCord(input.outer, cord, allowance);
  const section =
    cutBy !== null
      ? wrapOfCut(input.outer, cord, cutBy)
      : wish.cutBy === "trade"
        ? wrapOfCut(input.outer, cord, nominal)
        : wanted;
  if (section.seamAllowance < 1) {
    return failed({
      code: "strap-strip-too-narrow",
      path: `${path}width`,
      cutMm: section.cutWidth,
      leastMm: wrapOfCord(input.outer, cord, 1).cutWidth,
    });
  }
  if (wish.width?.kind === "finished" && Math.abs(wish.width.mm - section.finishedWidth) > CORE_TOLERANCE) {
    return failed({
      code: "strap-width-conflict",
      path: `${path}width`,
      core: "cord",
      widthMm: wish.width.mm,
      followsMm: section.finishedWidth,
    });
  }
  return ok({
    section,
    nominal,
    cut: section.cutWidth,
    finished: section.finishedWidth,
    setback: 0,
    foldLines: [],
    thickness: section.finishedWidth,
  });
}

/** Finished width a bought webbing gives, or null when none is named. */
function widthOfWebbing({ wish, construction, input }: ResolvedWish): number | null {
  const webbing = wish.core?.webbingWidth;
  if (webbing === undefined || construction.roles.webbing !== "needed") return null;
  return construction.widthOnWebbing(webbing, input.outer.thickness);
}

/** Largest number below `most` for which the law holds, found by halving; the law holds below and fails above. */
function largest(most: number, holds: (value: number) => boolean): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** A turned edge that has no room, with the most that would have; a strap that is too narrow for any. */
function edgeProblem(resolved: ResolvedWish, finished: number): Problem {
  const { construction, input, choices, path } = resolved;
  const turned = construction.turnedEdge(choices);
  const fits = (width: number, more: FoldChoices): boolean =>
    edgesFit(
      sectionAtFinishedWidth(
        planOfWish({ ...resolved, input: { ...input, choices: { ...choices, ...more } } }),
        width,
      ),
    );
  if (turned !== null) {
    const allowanceMm = choices[turned.choice] ?? turned.usual;
    const mostMm = largest(allowanceMm, (mm) => fits(finished, { [turned.choice]: mm }));
    if (mostMm >= LEAST_TURNED)
      return {
        code: "strap-turned-edge-wide",
        path: `${path}folds.${turned.choice}`,
        allowanceMm,
        mostMm,
        widthMm: finished,
      };
  }
  const leastMm = WIDEST - largest(WIDEST - finished, (less) => fits(WIDEST - less, {}));
  return { code: "strap-too-narrow", path: `${path}width`, widthMm: finished, leastMm };
}

/** Solves the section of a wish in whichever direction it asks for. */
export function solveWidths(resolved: ResolvedWish): Result<SolvedWidths> {
  const { wish, path, construction, input, choices } = resolved;
  if (construction.plan === null) return solveCorded(resolved);
  const plan = planOfWish(resolved);
  const trim = construction.trim(choices);
  const byWebbing = widthOfWebbing(resolved);
  const cutWish = wish.width?.kind === "cut" ? wish.width.mm : null;
  let finished = byWebbing ?? wish.width?.mm ?? 0;
  if (cutWish !== null && byWebbing === null) finished = finishedWidthOfCut(plan, cutWish - 2 * trim);
  const asked = wish.width?.kind === "finished" ? wish.width.mm : finished;
  if (Math.abs(asked - finished) > CORE_TOLERANCE + 2 * input.outer.thickness) {
    return failed({
      code: "strap-width-conflict",
      path: `${path}width`,
      core: "webbing",
      widthMm: asked,
      followsMm: finished,
    });
  }
  const nominal = nominalWidth(construction, input, finished);
  if (wish.cutBy === "trade") finished = finishedWidthOfCut(plan, nominal - 2 * trim);
  const least = leastWidth(plan);
  if (finished < least - EPSILON || finished <= 0) {
    const leastCut = sectionAtFinishedWidth(plan, least).strips[0]!.width + 2 * trim;
    return cutWish === null
      ? failed({ code: "strap-too-narrow", path: `${path}width`, widthMm: finished, leastMm: least })
      : failed({ code: "strap-strip-too-narrow", path: `${path}width`, cutMm: cutWish, leastMm: leastCut });
  }
  const section = sectionAtFinishedWidth(plan, finished);
  // Her own gap at the crease is warned of when it is too small, as the trade does crush edges into it.
  if (choices.edgeGap === undefined && !edgesFit(section)) return failed(edgeProblem(resolved, finished));
  const strip = section.strips[0]!;
  return ok({
    section,
    nominal,
    cut: strip.width + 2 * trim,
    finished,
    setback: construction.setback(section),
    foldLines: foldLinesOf(strip).map((y) => y + trim),
    thickness: flatThickness(section),
  });
}

import { type StrapWarning, warning } from "../../words/phrase.ts";
import { topstitchLength } from "./consumables.ts";
import { HARDWARE_TOLERANCE, limitsOf, passes, SLIDER_FACTOR } from "./limits.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import type { NeedleCheck, StrapLengths } from "./strapResult.ts";

/** Trade widths of webbing (common practice, no source), mm. */
export const WEBBING_WIDTHS: readonly number[] = [10, 15, 20, 25, 30, 38, 50, 75];
/** Vinyl is perforated by shorter stitches (common practice, no source), mm. */
const LEAST_VINYL_STITCH = 3;
/** A strap thinner than this slips on a fixed centre bar (from memory), mm. */
const SLIPS_BELOW = 2;
/** A strap thicker than this share of its width is a cord to fold and sew (from memory). */
const STOUT = 3;
/** Length × thickness of one layer / width² from which a tube is hard to turn right side out (from memory). */
const HARD_TO_TURN = 5;
/** An opening this many times the strap's thickness no longer grips it (from memory). */
const LOOSE_FACTOR = 10;

function materialWarnings({ wish, materials, construction, choices }: ResolvedWish): StrapWarning[] {
  const out: StrapWarning[] = [];
  const { outer } = materials;
  const frays = outer.kind === "woven" && construction.visibleEdges(choices) > 0;
  if (
    outer.kind === "woven" &&
    (wish.interfacing ?? "none") === "none" &&
    !Object.values(construction.roles).includes("needed")
  ) {
    out.push(warning("no-interfacing"));
  }
  if (frays) out.push(warning("raw-edge-frays"));
  if (outer.kind === "woven" && construction.mayLieOnBias) out.push(warning("tube-bias"));
  if (outer.backing === "knit") {
    out.push(warning("knit-backing"));
  }
  if (outer.kind === "vinyl" && outer.backing === "unknown") {
    out.push(warning("unknown-backing"));
  }
  const finish = wish.edgeFinish ?? "as-cut";
  if (finish === "burnish" && outer.kind !== "leather" && construction.visibleEdges(choices) > 0) {
    out.push(warning("burnish-leather"));
  }
  if (outer.thickness === 0) {
    out.push(warning("no-thickness"));
  }
  return out;
}

function hardwareWarnings(resolved: ResolvedWish, widths: SolvedWidths): StrapWarning[] {
  const out: StrapWarning[] = [];
  const thickness = widths.thickness;
  for (const one of resolved.wish.hardware ?? []) {
    const { kind, innerWidth, opening, fixedBar } = one;
    if (innerWidth - widths.finished > HARDWARE_TOLERANCE) {
      out.push(
        warning(`${kind}-loose`, {
          inner: innerWidth,
          width: widths.finished,
          tolerance: HARDWARE_TOLERANCE,
        }),
      );
    }
    if (kind !== "slider" && resolved.wish.length.kind === "worn" && one.length === undefined)
      out.push(warning(`${kind}-length-unknown`));
    if (kind !== "slider") continue;
    if (opening === undefined) {
      out.push(
        warning("slider-opening-unknown", {
          needed: SLIDER_FACTOR * thickness,
        }),
      );
    } else if (opening < SLIDER_FACTOR * thickness) {
      out.push(
        warning("slider-tight", {
          opening,
          thickness,
          needed: SLIDER_FACTOR * thickness,
        }),
      );
    } else if (opening > LOOSE_FACTOR * thickness) {
      out.push(
        warning("slider-slips", {
          opening,
          thickness,
        }),
      );
    }
    if (fixedBar === true && thickness < SLIPS_BELOW) {
      out.push(
        warning("slider-fixed-bar", {
          thickness,
        }),
      );
    }
  }
  return out;
}

function machineWarnings(resolved: ResolvedWish, needle: readonly NeedleCheck[]): StrapWarning[] {
  const limits = { ...limitsOf(resolved), sliderOpening: Number.POSITIVE_INFINITY };
  const failing = needle.filter((check) => !passes(limits, [check], 0));
  const skive = failing.length > 0 && resolved.materials.outer.kind === "leather" ? [warning("machine-skive")] : [];
  const { maxThickness, footLift } = resolved.wish.machine ?? {};
  const own = maxThickness !== undefined || footLift !== undefined;
  const said = failing.map(({ layers, thickness, where }) =>
    thickness > limits.thickness
      ? warning(
          own ? "machine-thickness" : "home-machine",
          { thickness, limit: limits.thickness },
          { counts: { layers }, where },
        )
      : warning("machine-layers", {}, { counts: { layers, most: limits.layers }, where }),
  );
  return [...said, ...skive];
}

/** Straps so stout, or tubes so long and narrow, that hands and tools give up. */
function shapeWarnings(
  { construction, input }: ResolvedWish,
  widths: SolvedWidths,
  lengths: StrapLengths,
): StrapWarning[] {
  if (widths.section.kind === "wrapped") return [];
  const out: StrapWarning[] = [];
  const { finished: width, thickness } = widths;
  if (thickness > width / STOUT && construction.layers({}) > 1)
    out.push(warning("strap-stout", { width, thickness }));
  const length = lengths.finished;
  if (construction.pulledThrough && (length * input.outer.thickness) / width ** 2 > HARD_TO_TURN)
    out.push(warning("hard-to-turn", { length, width }));
  return out;
}

function foldWarnings(resolved: ResolvedWish, widths: SolvedWidths): StrapWarning[] {
  const { section } = widths;
  const { choices, construction, wish, input } = resolved;
  const out: StrapWarning[] = [];
  if (choices.edgeGap !== undefined && construction.leastEdgeGap !== null) {
    const least = construction.leastEdgeGap(input.outer);
    if (choices.edgeGap < least - 1e-9) {
      out.push(
        warning("edges-collide", {
          gap: choices.edgeGap,
          least,
        }),
      );
    }
  }
  if (resolved.materials.outer.kind === "vinyl" && topstitchLength(resolved) < LEAST_VINYL_STITCH) {
    out.push(
      warning("stitch-short", {
        stitch: topstitchLength(resolved),
        least: LEAST_VINYL_STITCH,
      }),
    );
  }
  if (construction.roles.webbing === "needed" && section.kind === "layered") {
    const slab = section.slabs.find((one) => one.role === "webbing")!;
    const width = slab.toX - slab.fromX;
    const nearest = WEBBING_WIDTHS.reduce((a, b) => (Math.abs(b - width) < Math.abs(a - width) ? b : a));
    if (wish.core?.webbingWidth === undefined && Math.abs(nearest - width) > 0.5) {
      out.push(
        warning("webbing-width", {
          width,
          nearest,
        }),
      );
    }
  }
  return out;
}

/** Everything about a strap worth knowing before the first cut. */
export function warningsOf(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  needle: readonly NeedleCheck[],
  lengths: StrapLengths,
): readonly StrapWarning[] {
  return [
    ...shapeWarnings(resolved, widths, lengths),
    ...materialWarnings(resolved),
    ...foldWarnings(resolved, widths),
    ...hardwareWarnings(resolved, widths),
    ...machineWarnings(resolved, needle),
  ];
}

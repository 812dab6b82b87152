import { topstitchLength } from "./consumables.ts";
import { HARDWARE_TOLERANCE, limitsOf, passes, SLIDER_FACTOR } from "./limits.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import type { NeedleCheck, StrapWarning } from "./strapResult.ts";

/** Trade widths of webbing (common practice, no source), mm. */
export const WEBBING_WIDTHS: readonly number[] = [10, 15, 20, 25, 30, 38, 50, 75];
/** Vinyl is perforated by shorter stitches (common practice, no source), mm. */
const LEAST_VINYL_STITCH = 3;
/** A strap thinner than this slips on a fixed centre bar (from memory), mm. */
const SLIPS_BELOW = 2;
/** An opening this many times the strap's thickness no longer grips it (from memory). */
const LOOSE_FACTOR = 10;

function warn(code: string, text: string, lengths: Readonly<Record<string, number>> = {}): StrapWarning {
  return { code, text, lengths };
}

function materialWarnings({ wish, materials, construction, choices }: ResolvedWish): StrapWarning[] {
  const out: StrapWarning[] = [];
  const { outer } = materials;
  const frays = outer.kind === "woven" && construction.visibleEdges(choices) > 0 && construction.id !== "corded";
  if (outer.kind === "woven" && (wish.interfacing ?? "none") === "none" && construction.needs.length === 0) {
    out.push(
      warn(
        "no-interfacing",
        "Woven cloth without interfacing warps and twists when it is folded and topstitched: interface it.",
      ),
    );
  }
  if (frays) out.push(warn("raw-edge-frays", "A raw edge of woven cloth shows and will fray."));
  if (outer.backing === "knit") {
    out.push(
      warn(
        "knit-backing",
        "Knit backing gives across its width: straps are laid along the roll unless you say otherwise.",
      ),
    );
  }
  if (outer.kind === "vinyl" && outer.backing === "unknown") {
    out.push(
      warn(
        "unknown-backing",
        "Stretch of vinyl differs by make: pull it both ways first, and cut all straps in one direction.",
      ),
    );
  }
  if (outer.thickness === 0) {
    out.push(
      warn(
        "no-thickness",
        "Thickness 0 gives the round rule of the trade; measure a folded stack for a true size.",
      ),
    );
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
        warn(
          "hardware-loose",
          `The ${kind} is {inner} wide inside: a strap of {width} wanders in it (±{tolerance} is usual).`,
          {
            inner: innerWidth,
            width: widths.finished,
            tolerance: HARDWARE_TOLERANCE,
          },
        ),
      );
    }
    if (kind !== "slider") continue;
    if (opening === undefined) {
      out.push(
        warn("slider-opening-unknown", "Measure the slider's inner height: this strap needs about {needed}.", {
          needed: SLIDER_FACTOR * thickness,
        }),
      );
    } else if (opening < SLIDER_FACTOR * thickness) {
      out.push(
        warn("slider-tight", "The slider opens {opening}; a strap {thickness} thick needs about {needed}.", {
          opening,
          thickness,
          needed: SLIDER_FACTOR * thickness,
        }),
      );
    } else if (opening > LOOSE_FACTOR * thickness) {
      out.push(
        warn(
          "slider-slips",
          "The slider opens {opening}, far more than a strap {thickness} thick needs: it will slip.",
          {
            opening,
            thickness,
          },
        ),
      );
    }
    if (fixedBar === true && thickness < SLIPS_BELOW) {
      out.push(
        warn(
          "slider-slips",
          "A strap {thickness} thick slips on a slider with a fixed bar: use one whose bar moves, or a thicker strap.",
          {
            thickness,
          },
        ),
      );
    }
  }
  return out;
}

function machineWarnings(resolved: ResolvedWish, needle: readonly NeedleCheck[]): StrapWarning[] {
  const limits = { ...limitsOf(resolved), sliderOpening: Number.POSITIVE_INFINITY };
  return needle
    .filter((check) => !passes(limits, [check], 0))
    .map((check) =>
      warn(
        "machine-limit",
        Number.isFinite(limits.thickness) && check.thickness > limits.thickness
          ? `${check.layers} layers, {thickness} thick ${check.where}: more than the machine's {limit}.`
          : `${check.layers} layers ${check.where}: more than the machine's ${limits.layers}.`,
        Number.isFinite(limits.thickness)
          ? { thickness: check.thickness, limit: limits.thickness }
          : { thickness: check.thickness },
      ),
    );
}

function foldWarnings(resolved: ResolvedWish, widths: SolvedWidths): StrapWarning[] {
  const { section } = widths;
  const { choices, construction, wish, input } = resolved;
  const out: StrapWarning[] = [];
  if (section.kind === "layered" && choices.edgeGap !== undefined && construction.id === "fourfold") {
    const { thickness, neutral, leastRadius } = input.outer;
    const radius = Math.max(thickness, leastRadius);
    const least = (Math.PI / 2) * (radius + neutral * thickness) - radius;
    if (choices.edgeGap < least - 1e-9) {
      out.push(
        warn(
          "edges-collide",
          "Raw edges {gap} from the centre crease run into the fold: hold them back at least {least}.",
          {
            gap: choices.edgeGap,
            least,
          },
        ),
      );
    }
  }
  if (resolved.materials.outer.kind === "vinyl" && topstitchLength(resolved) < LEAST_VINYL_STITCH) {
    out.push(
      warn("stitch-short", "Stitches of {stitch} perforate vinyl: use {least} or longer.", {
        stitch: topstitchLength(resolved),
        least: LEAST_VINYL_STITCH,
      }),
    );
  }
  if (construction.needs.includes("webbing") && section.kind === "layered") {
    const slab = section.slabs.find((one) => one.role === "webbing")!;
    const width = slab.toX - slab.fromX;
    const nearest = WEBBING_WIDTHS.reduce((a, b) => (Math.abs(b - width) < Math.abs(a - width) ? b : a));
    if (wish.core?.webbingWidth === undefined && Math.abs(nearest - width) > 0.5) {
      out.push(
        warn(
          "webbing-width",
          "The webbing comes out {width} wide; the nearest trade width is {nearest}. Name the webbing to fit the cloth to it.",
          {
            width,
            nearest,
          },
        ),
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
): readonly StrapWarning[] {
  return [
    ...materialWarnings(resolved),
    ...foldWarnings(resolved, widths),
    ...hardwareWarnings(resolved, widths),
    ...machineWarnings(resolved, needle),
  ];
}

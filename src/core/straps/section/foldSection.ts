import type { AcrossPlan, EdgePlan, PlyRole, SectionPlan, Side, SlabPlan, StripPlan } from "./foldPlan.ts";
import { bendAllowance } from "./ply.ts";
import { foldLeastRadius, foldThickness, runThickness } from "./skiving.ts";

/** A straight part of a strip: where it lies across the strap (x) and on the flat strip. mm. */
export interface SolvedRun {
  readonly kind: "run";
  readonly level: number;
  readonly fromX: number;
  readonly toX: number;
  readonly flatFrom: number;
  readonly flatTo: number;
}

/** A half turn from one level to another round `axisX`, with a straight `rise` in its middle for a square core. mm. */
export interface SolvedBend {
  readonly kind: "bend";
  readonly side: Side;
  readonly axisX: number;
  readonly fromLevel: number;
  readonly toLevel: number;
  readonly insideRadius: number;
  readonly rise: number;
  /** Thickness of the strip in the fold: less than elsewhere where it is skived. */
  readonly thickness: number;
  /** Part of the rise that goes up the unskived side: it lifts nothing. */
  readonly step: number;
  readonly flatFrom: number;
  readonly flatTo: number;
}

/** A quarter turn at a strip's raw edge round the end of a square core, and `rise` beyond it. mm. */
export interface SolvedCorner {
  readonly kind: "corner";
  readonly side: Side;
  readonly axisX: number;
  readonly level: number;
  readonly up: boolean;
  readonly rise: number;
  readonly flatFrom: number;
  readonly flatTo: number;
}

type SolvedSegment = SolvedRun | SolvedBend | SolvedCorner;

export interface SolvedStrip {
  readonly plan: StripPlan;
  /** Flat width of the strip: the cut width, mm. */
  readonly width: number;
  readonly segments: readonly SolvedSegment[];
}

export interface SolvedSlab {
  readonly plan: SlabPlan;
  readonly role: PlyRole;
  readonly fromX: number;
  readonly toX: number;
}

/** A cross-section with every run and bend placed. mm. */
export interface SolvedSection {
  readonly kind: "layered";
  readonly plan: SectionPlan;
  readonly finishedWidth: number;
  readonly strips: readonly SolvedStrip[];
  readonly slabs: readonly SolvedSlab[];
}

/** Thickness of each level of the stack, mm: the thickest thing lying on it. */
export function levelThicknesses(plan: SectionPlan): readonly number[] {
  const out: number[] = [];
  const put = (level: number, thickness: number): void => {
    while (out.length <= level) out.push(0);
    out[level] = Math.max(out[level]!, thickness);
  };
  for (const strip of plan.strips)
    for (const [run, level] of strip.levels.entries()) put(level, runThickness(strip, run));
  for (const slab of plan.slabs) put(slab.level, slab.thickness);
  return out;
}

interface Shape {
  readonly radius: number;
  readonly rise: number;
  readonly step: number;
  readonly thickness: number;
}

/**
 * Inside radius and straight rise of a strip's fold number `index`, mm: half of what it wraps or the material's own
 * least radius, whichever is more; square cores count whole, as the rise. A skived fold also climbs the step that
 * skiving leaves.
 */
function foldShape(plan: SectionPlan, strip: StripPlan, index: number): Shape {
  const thicknesses = levelThicknesses(plan);
  const low = Math.min(strip.levels[index]!, strip.levels[index + 1]!);
  const high = Math.max(strip.levels[index]!, strip.levels[index + 1]!);
  const square = new Set(plan.slabs.filter((slab) => slab.square).map((slab) => slab.level));
  const between = Array.from({ length: high - low - 1 }, (_, i) => low + 1 + i);
  let soft = 0;
  let rise = 0;
  for (const level of strip.wraps?.[index] ?? between) {
    if (square.has(level)) rise += thicknesses[level]!;
    else soft += thicknesses[level]!;
  }
  const thickness = foldThickness(strip, index);
  const step = strip.ply.thickness - thickness;
  return { radius: Math.max(soft / 2, foldLeastRadius(strip, index)), rise: rise + step, step, thickness };
}

function acrossX(place: AcrossPlan, width: number): number {
  if (place.from === "middle") return width / 2 + place.mm;
  return place.from === "left" ? place.mm : width - place.mm;
}

function otherSide(side: Side): Side {
  return side === "left" ? "right" : "left";
}

/** Places one strip for a finished width. Exact arithmetic; runs come out negative when the width is too small. */
function placeStrip(plan: SectionPlan, strip: StripPlan, width: number): SolvedStrip {
  const { thickness, neutral } = strip.ply;
  const segments: SolvedSegment[] = [];
  let flat = 0;
  const quarter = bendAllowance(Math.PI / 2, 0, thickness, neutral);
  const corner = (edge: EdgePlan, level: number, side: Side, axisX: number): void => {
    if (!edge.corner) return;
    const length = quarter + edge.corner.rise;
    segments.push({ kind: "corner", side, axisX, level, ...edge.corner, flatFrom: flat, flatTo: flat + length });
    flat += length;
  };
  /** Where the flat part ends at a raw edge: at the edge itself, or where it starts to turn the corner. */
  const stop = (edge: EdgePlan, side: Side): number => {
    const x = acrossX(edge, width);
    if (!edge.corner) return x;
    return side === "right" ? x - thickness : x + thickness;
  };
  let toward = strip.firstFold;
  let x = stop(strip.start, otherSide(toward));
  corner(strip.start, strip.levels[0]!, otherSide(toward), x);
  for (let i = 0; i < strip.levels.length; i++) {
    const last = i === strip.levels.length - 1;
    const shape = last ? null : foldShape(plan, strip, i);
    const outside = acrossX(strip.outsides?.[i] ?? { from: toward, mm: 0 }, width);
    const reach = shape ? shape.radius + shape.thickness : 0;
    const toX = shape ? outside + (toward === "left" ? reach : -reach) : stop(strip.end, toward);
    const length = toward === "left" ? x - toX : toX - x;
    segments.push({
      kind: "run",
      level: strip.levels[i]!,
      fromX: x,
      toX,
      flatFrom: flat,
      flatTo: flat + length,
    });
    flat += length;
    if (shape) {
      const bend = bendAllowance(Math.PI, shape.radius, shape.thickness, neutral) + shape.rise;
      segments.push({
        kind: "bend",
        side: toward,
        axisX: toX,
        fromLevel: strip.levels[i]!,
        toLevel: strip.levels[i + 1]!,
        insideRadius: shape.radius,
        rise: shape.rise,
        thickness: shape.thickness,
        step: shape.step,
        flatFrom: flat,
        flatTo: flat + bend,
      });
      flat += bend;
    } else corner(strip.end, strip.levels[i]!, toward, toX);
    x = toX;
    toward = otherSide(toward);
  }
  return { plan: strip, width: flat, segments };
}

/**
 * The section at a finished width: cut width of every strip, and where each run, fold and edge lies.
 *
 * Units:  mm. Every length is linear in the width, so the inverse is exact.
 * Errors: none here; `leastWidth` says from which width on all runs are real.
 * Cost:   O(strips × levels).
 */
export function sectionAtFinishedWidth(plan: SectionPlan, finishedWidth: number): SolvedSection {
  return {
    kind: "layered",
    plan,
    finishedWidth,
    strips: plan.strips.map((strip) => placeStrip(plan, strip, finishedWidth)),
    slabs: plan.slabs.map((slab) => ({
      plan: slab,
      role: slab.role,
      fromX: slab.insetLeft,
      toX: finishedWidth - slab.insetRight,
    })),
  };
}

/** The finished width at which strip number `index` comes out as wide as `cutWidth`. Exact inverse of the above. */
export function finishedWidthOfCut(plan: SectionPlan, cutWidth: number, index = 0): number {
  const strip = plan.strips[index]!;
  const atZero = placeStrip(plan, strip, 0).width;
  const slope = placeStrip(plan, strip, 1).width - atZero;
  return (cutWidth - atZero) / slope;
}

/** The section whose first strip is cut to `cutWidth`. */
export function sectionAtCutWidth(plan: SectionPlan, cutWidth: number): SolvedSection {
  return sectionAtFinishedWidth(plan, finishedWidthOfCut(plan, cutWidth));
}

/** Smallest finished width for which no run or core is shorter than nothing, mm. */
export function leastWidth(plan: SectionPlan): number {
  const lengths = (width: number): number[] => {
    const section = sectionAtFinishedWidth(plan, width);
    const runs = section.strips.flatMap((strip) => strip.segments.filter((segment) => segment.kind === "run"));
    return [...runs.map((run) => run.flatTo - run.flatFrom), ...section.slabs.map((slab) => slab.toX - slab.fromX)];
  };
  const atZero = lengths(0);
  const atOne = lengths(1);
  let least = 0;
  for (let i = 0; i < atZero.length; i++) {
    const slope = atOne[i]! - atZero[i]!;
    if (slope > 1e-9) least = Math.max(least, -atZero[i]! / slope);
  }
  return least;
}

/** Middle of each fold on the flat strip, from its lower edge, mm: where the fold line is drawn. */
export function foldLinesOf(strip: SolvedStrip): readonly number[] {
  return strip.segments
    .filter((segment) => segment.kind === "bend")
    .map((bend) => (bend.flatFrom + bend.flatTo) / 2);
}

import { scaling } from "../geometry/affine.ts";
import { unionOf } from "../geometry/clipper.ts";
import { polygonArea, type Ring } from "../geometry/ring.ts";
import type { PatternProblem } from "../problems/patternProblems.ts";
import { assignRoles, type RoleLine, type RoleWishes } from "./assignRoles.ts";
import { type Curve, isFiniteCurve, mapCurve } from "./curve.ts";
import { doublesOf, partDoublesOf } from "./doublesOf.ts";
import { fitArcs } from "./fitArcs.ts";
import { type JoinedLine, joinLines } from "./joinLines.ts";
import { loopsOfRing } from "./loopsOfRing.ts";
import { curveBox, flattenCurve } from "./measureCurve.ts";
import { nestLines } from "./nesting.ts";
import type { PatternDrawing, PatternLine } from "./patternDrawing.ts";
import type { PatternOutline, UnderstoodPattern } from "./patternOutline.ts";
import { type Work, workOf } from "./patternWork.ts";
import { ringCrossings } from "./ringCrossings.ts";
import { PATTERN_UNITS, scaleDoubt } from "./scaleDoubts.ts";
import { tidyCurve } from "./tidyCurve.ts";

/** Faults that can be put right. */
export const MENDS = ["gaps", "doubles", "crossings", "slivers", "scale"] as const;
export type Mend = (typeof MENDS)[number];

/** How a drawing is to be understood. */
export interface UnderstandOptions {
  /** Fitted arcs stay within this of the drawn line, mm. */
  readonly tolerance: number;
  readonly mend: ReadonlySet<Mend>;
  readonly roles: RoleWishes;
  /** What one step of the file is taken for instead of what the reader took; see `PATTERN_UNITS`. */
  readonly unit?: string | undefined;
}

export const FIT_TOLERANCE = 0.05;

/** Further from the origin, or larger, nothing that is sewn can be, mm. */
const MOST_REACH = 1e6;
const MOST_LINES = 20_000;
const MOST_POINTS = 400_000;
/** Closed shapes thinner than this on the average are slivers, mm. */
const SLIVER_WIDTH = 0.5;

/**
 * What a drawing holds for a maker: its lines joined, told apart and measured, what is wrong with them, and mended as
 * far as asked.
 * Cost: O(n log n) for the lines of ordinary patterns; a drawing with too many of them is refused at once.
 */
export function understandPattern(drawing: PatternDrawing, options: UnderstandOptions): UnderstoodPattern {
  const problems: PatternProblem[] = [];
  const scaled = atScale(drawing, options, problems);
  const lines = usableLines(scaled, problems);
  const refused = tooMuch(lines);
  if (refused) return { kind: drawing.kind, outlines: [], marks: [], problems: [...problems, refused] };
  const joined = joinLines(lines, options.mend.has("gaps"));
  let work = joined.map(({ line }) => workOf(line));
  const names = namesOf(work);
  problems.push(...gapProblems(joined, names, options.mend));
  work = withoutCrossings(work, names, options.mend, problems);
  const mendsDoubles = options.mend.has("doubles");
  const doubled = doublesOf(work, names, mendsDoubles, problems);
  const partly = partDoublesOf(work, names, options.roles, mendsDoubles, new Set(doubled), problems);
  const gone = new Set([...(mendsDoubles ? doubled : []), ...slivers(work, names, options.mend, problems)]);
  const kept = work.flatMap((one, i) => {
    if (gone.has(i)) return [];
    const rest = partly.get(i);
    if (rest === undefined) return [{ ...one, name: names[i]! }];
    return rest.map((curve, k) => ({
      ...workOf({ ...one.line, curve }),
      name: k === 0 ? names[i]! : `${names[i]!} (${k + 1})`,
    }));
  });
  const outlines = outlinesOf(kept, options, drawing.kind);
  if (outlines.length === 0) problems.push({ code: "pattern-empty", path: "" });
  const picture = scaledPicture(drawing, scaled);
  return {
    kind: drawing.kind,
    outlines,
    marks: scaledMarks(drawing, scaled),
    problems,
    ...(picture ? { picture } : {}),
  };
}

interface Scaled {
  readonly lines: readonly PatternLine[];
  readonly factor: number;
}

/** The drawing at the scale that was asked for, or at the one that makes its sides whole. */
function atScale(drawing: PatternDrawing, options: UnderstandOptions, problems: PatternProblem[]): Scaled {
  const asked = options.unit === undefined ? undefined : PATTERN_UNITS[options.unit];
  if (asked !== undefined) {
    problems.push(...drawing.problems.filter(({ code }) => code !== "pattern-unit-assumed"));
    return scaledBy(drawing, asked / drawing.unit.ofMm);
  }
  problems.push(...drawing.problems);
  const looked = drawing.lines.slice(0, 500).flatMap((line) => {
    const curve = isFiniteCurve(line.curve, MOST_REACH) ? tidyCurve(line.curve) : null;
    return curve ? [{ ...workOf({ ...line, curve }), closed: curve.closed }] : [];
  });
  const doubt = scaleDoubt(looked, drawing.unit.name);
  if (doubt === null) return scaledBy(drawing, 1);
  const mended = options.mend.has("scale");
  problems.push({ code: "pattern-scale-doubtful", path: "", ...doubt, mended });
  return scaledBy(drawing, mended ? doubt.wouldBeMm / doubt.sideMm : 1);
}

function scaledBy(drawing: PatternDrawing, factor: number): Scaled {
  if (factor === 1) return { lines: drawing.lines, factor };
  const map = scaling(factor);
  const lines = drawing.lines.map((line) => ({
    ...line,
    curve: mapCurve(line.curve, map),
    dash: line.dash.map((length) => length * factor),
  }));
  return { lines, factor };
}

function scaledMarks(drawing: PatternDrawing, { factor }: Scaled): PatternDrawing["marks"] {
  return drawing.marks.map((mark) => ({ ...mark, x: mark.x * factor, y: mark.y * factor }));
}

function scaledPicture({ picture }: PatternDrawing, { factor }: Scaled): PatternDrawing["picture"] {
  if (picture === undefined) return undefined;
  const { minX, minY, maxX, maxY } = picture.box;
  return {
    ...picture,
    box: { minX: minX * factor, minY: minY * factor, maxX: maxX * factor, maxY: maxY * factor },
  };
}

function usableLines({ lines }: Scaled, problems: PatternProblem[]): readonly PatternLine[] {
  const finite = lines.filter(({ curve }) => isFiniteCurve(curve, MOST_REACH));
  const unusable = lines.length - finite.length;
  if (unusable > 0) problems.push({ code: "pattern-numbers-unusable", path: "", count: unusable });
  const tidy = finite.flatMap((line): PatternLine[] => {
    const curve = tidyCurve(line.curve);
    return curve ? [{ ...line, curve }] : [];
  });
  const whole = tidy.filter(({ curve }) => !isFlat(curve));
  const flat = finite.length - whole.length;
  if (flat > 0) problems.push({ code: "pattern-flat", path: "", count: flat });
  return whole;
}

/** A closed line that encloses nothing, as everything does under a scale of 0. */
function isFlat(curve: Curve): boolean {
  if (!curve.closed) return false;
  const box = curveBox(curve);
  return Math.min(box.maxX - box.minX, box.maxY - box.minY) < 1e-3;
}

function tooMuch(lines: readonly PatternLine[]): PatternProblem | null {
  if (lines.length > MOST_LINES) return { code: "pattern-too-much", path: "", of: "lines", limit: MOST_LINES };
  const points = lines.reduce((sum, { curve }) => sum + curve.parts.length, 0);
  return points > MOST_POINTS / 4
    ? { code: "pattern-too-much", path: "", of: "points", limit: MOST_POINTS / 4 }
    : null;
}

/** A name for each line, its own or a number, none twice. */
function namesOf(work: readonly Work[]): readonly string[] {
  const counts = new Map<string, number>();
  return work.map(({ line }, i) => {
    const stem = line.name === "" ? `line ${i + 1}` : line.name;
    const count = (counts.get(stem) ?? 0) + 1;
    counts.set(stem, count);
    return count === 1 ? stem : `${stem} ${count}`;
  });
}

function gapProblems(
  joined: readonly JoinedLine[],
  names: readonly string[],
  mend: ReadonlySet<Mend>,
): PatternProblem[] {
  return joined.flatMap(({ gapMm, gapX, gapY }, i): PatternProblem[] => {
    if (gapMm === 0) return [];
    const mended = mend.has("gaps");
    return [{ code: "pattern-gap", path: names[i]!, gapMm, xMm: gapX, yMm: gapY, mended }];
  });
}

/** Outlines that cross themselves are told; mended, the largest of the areas they enclose is kept. */
function withoutCrossings(
  work: readonly Work[],
  names: readonly string[],
  mend: ReadonlySet<Mend>,
  problems: PatternProblem[],
): Work[] {
  return work.map((one, i) => {
    const found = one.line.curve.closed ? ringCrossings(one.points) : null;
    if (found === null) return one;
    const mended = mend.has("crossings");
    const { count, more, x, y } = found;
    problems.push({ code: "pattern-crosses-itself", path: names[i]!, xMm: x, yMm: y, count, more, mended });
    return mended ? workOf({ ...one.line, curve: largestArea(one.line.curve) }) : one;
  });
}

function largestArea(curve: Curve): Curve {
  const polygons = unionOf([Float64Array.from(flattenCurve(curve, 0.01, 500))]);
  const rings = polygons.flatMap(({ outer }) => loopsOfRing(outer));
  const largest = rings.reduce((best, ring) => (ringSize(ring) > ringSize(best) ? ring : best));
  const parts = [];
  for (let i = 2; i < largest.length; i += 2)
    parts.push({ kind: "straight" as const, x: largest[i]!, y: largest[i + 1]! });
  return { x: largest[0]!, y: largest[1]!, parts, closed: true };
}

function ringSize(ring: Ring): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2)
    twice += ring[j]! * ring[i + 1]! - ring[i]! * ring[j + 1]!;
  return Math.abs(twice);
}

function slivers(
  work: readonly Work[],
  names: readonly string[],
  mend: ReadonlySet<Mend>,
  problems: PatternProblem[],
): number[] {
  const mended = mend.has("slivers");
  const thin = work.flatMap((one, i) => {
    const { minX, minY, maxX, maxY } = one.box;
    const lengthMm = Math.hypot(maxX - minX, maxY - minY);
    const widthMm = one.areaMm2 / lengthMm;
    // Where an outline crosses itself its two sides' areas cancel out: a bow tie is no sliver, however even.
    if (!one.line.curve.closed || widthMm >= SLIVER_WIDTH || coveredBy(one) / lengthMm >= SLIVER_WIDTH) return [];
    problems.push({ code: "pattern-sliver", path: names[i]!, widthMm, lengthMm, mended });
    return [i];
  });
  return mended ? thin : [];
}

/** Area that a closed line covers, whichever way its parts run. mm². */
function coveredBy({ points }: Work): number {
  return unionOf([points]).reduce((sum, part) => sum + polygonArea(part), 0);
}

function outlinesOf(
  work: readonly (Work & { readonly name: string })[],
  options: UnderstandOptions,
  kind: PatternDrawing["kind"],
): PatternOutline[] {
  const nested = work.map((one) => ({ ...one, closed: one.line.curve.closed }));
  const inside = nestLines(nested);
  const lines = nested.map(
    (one, i): RoleLine => ({
      ...one,
      look: one.line,
      inside: inside[i]!,
      isStraight: one.line.curve.parts.length === 1 && one.line.curve.parts[0]!.kind === "straight",
    }),
  );
  const roles = assignRoles(lines, options.roles, kind);
  return work.map(({ line, box, areaMm2, name }, i) => ({
    ...line,
    ...roles[i]!,
    name,
    closed: line.curve.closed,
    contour: fitArcs(line.curve, options.tolerance),
    box,
    areaMm2,
    inside: inside[i]!,
  }));
}

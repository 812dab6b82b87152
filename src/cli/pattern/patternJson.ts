import { flattenCurve } from "../../core/patterns/measureCurve.ts";
import type { PatternOutline, UnderstoodPattern } from "../../core/patterns/patternOutline.ts";
import { problemLine } from "../../core/problems/describeProblem.ts";
import type { LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { sayLengths } from "../../core/units/sayLength.ts";
import { SENTENCES } from "../../core/words/words.ts";
import type { ToldProblem } from "../inOut/toldProblem.ts";

/** Points keep so near to the drawn curve, mm. */
const CHORD = 0.005;

/** The document of `pattern --json`, version 1; see shared/pattern.schema.json. Lengths mm, y up. */
export function patternJson(pattern: UnderstoodPattern, language: Language, lengths: LengthStyle): object {
  const { kind, outlines, marks } = pattern;
  return {
    laywrightPattern: 1,
    kind,
    outlines: outlines.map((outline) => outlineJson(outline, outlines)),
    marks: marks.map(({ x, y, ...mark }) => ({ ...mark, x: rounded(x), y: rounded(y) })),
    problems: problemsInWords(pattern, language, lengths),
  };
}

/** The same document for a file that could not be opened. */
export function emptyPatternJson(problems: readonly ToldProblem[]): object {
  return { laywrightPattern: 1, kind: null, outlines: [], marks: [], problems };
}

/** Every problem with its sentence, lengths written as `lengths` says. */
export function problemsInWords(
  { problems }: UnderstoodPattern,
  language: Language,
  lengths: LengthStyle,
): readonly ToldProblem[] {
  const say = sayLengths(lengths, language);
  return problems.map((problem) => ({ ...problem, message: problemLine(problem, SENTENCES[language], say) }));
}

function outlineJson(outline: PatternOutline, all: readonly PatternOutline[]): object {
  const { box, contour, inside } = outline;
  const points = flattenCurve(outline.curve, CHORD);
  const pairs: [number, number][] = [];
  for (let i = 0; i < points.length; i += 2) pairs.push([rounded(points[i]!), rounded(points[i + 1]!)]);
  return {
    name: outline.name,
    layer: outline.layer,
    role: outline.role,
    told: outline.reason,
    closed: outline.closed,
    widthMm: rounded(box.maxX - box.minX),
    heightMm: rounded(box.maxY - box.minY),
    areaMm2: rounded(outline.areaMm2),
    inside: inside === null ? null : all[inside]!.name,
    color: outline.color,
    dash: outline.dash.map(rounded),
    points: pairs,
    /** Corners `[x, y, bulge]` with the arcs fitted. */
    corners: cornersOf(contour.vertices),
  };
}

function cornersOf(vertices: Float64Array): [number, number, number][] {
  const corners: [number, number, number][] = [];
  for (let i = 0; i < vertices.length; i += 3)
    corners.push([rounded(vertices[i]!), rounded(vertices[i + 1]!), Number(vertices[i + 2]!.toPrecision(9))]);
  return corners;
}

/** A hundredth of a micrometre; no −0. */
function rounded(value: number): number {
  return Math.round(value * 1e5) / 1e5 || 0;
}

import { scaling } from "../../core/geometry/affine.ts";
import { mapCurve } from "../../core/patterns/curve.ts";
import type { PatternDrawing } from "../../core/patterns/patternDrawing.ts";
import type { PatternProblem } from "../../core/problems/patternProblems.ts";
import { dxfDrawing } from "./dxfDrawing.ts";
import { DxfWalk } from "./dxfWalk.ts";
import { dxfSections, numberOf } from "./groups.ts";

/** What `$INSUNITS` counts in, mm. Source: DXF reference, HEADER section variables. */
const UNITS: readonly (readonly [name: string, ofMm: number] | null)[] = [
  null,
  ["in", 25.4],
  ["ft", 304.8],
  ["mi", 1_609_344],
  ["mm", 1],
  ["cm", 10],
  ["m", 1000],
  ["km", 1e6],
  ["µin", 2.54e-5],
  ["mil", 0.0254],
  ["yd", 914.4],
  ["Å", 1e-7],
  ["nm", 1e-6],
  ["µm", 1e-3],
  ["dm", 100],
];

/**
 * The lines of a text DXF that are drawn and can be seen, in mm. Where the file states no unit, one is one mm, and
 * that is told. Model space only; entities of other files are not opened.
 *
 * Errors: `ReadingEnds` when the text is no whole DXF or has too much in it.
 * Source: DXF reference (R12 to 2018, the entities of outlines).
 */
export function readDxf(text: string): PatternDrawing {
  const drawing = dxfDrawing(dxfSections(text));
  const stated = drawing.header.get("$INSUNITS");
  const known = stated ? (UNITS[numberOf(stated, 70)] ?? null) : null;
  const [name, ofMm] = known ?? ["mm", 1];
  const walk = new DxfWalk(drawing);
  walk.draw();
  const problems: PatternProblem[] = [];
  if (known === null) problems.push({ code: "pattern-unit-assumed", path: "", unit: name, ofMm });
  for (const [thing, count] of walk.leftOut) problems.push({ code: "pattern-left-out", path: "", thing, count });
  const map = scaling(ofMm);
  return {
    kind: "dxf",
    unit: { name, ofMm },
    lines: walk.lines.map((line) => ({
      ...line,
      curve: mapCurve(line.curve, map),
      dash: line.dash.map((length) => length * ofMm),
    })),
    marks: walk.marks.map((mark) => ({ ...mark, x: mark.x * ofMm, y: mark.y * ofMm })),
    problems,
  };
}

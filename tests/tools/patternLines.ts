// Lines of made-up patterns, and what is understood of them.
import type { Curve } from "../../src/core/patterns/curve.ts";
import type { PatternDrawing, PatternLine } from "../../src/core/patterns/patternDrawing.ts";
import type { UnderstoodPattern } from "../../src/core/patterns/patternOutline.ts";
import { type Mend, type UnderstandOptions, understandPattern } from "../../src/core/patterns/understandPattern.ts";

type Points = readonly (readonly [number, number])[];

export function line(points: Points, closed: boolean, look: Partial<PatternLine> = {}): PatternLine {
  const [first, ...rest] = points;
  const curve: Curve = {
    x: first![0],
    y: first![1],
    parts: rest.map(([x, y]) => ({ kind: "straight", x, y })),
    closed,
  };
  return { name: "", layer: "", names: [], color: "#000000", dash: [], ...look, curve };
}

export const box = (
  x: number,
  y: number,
  width: number,
  height: number,
  look: Partial<PatternLine> = {},
): PatternLine =>
  line(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    true,
    look,
  );

export function understood(
  lines: readonly PatternLine[],
  { mend = [], ...options }: Partial<Omit<UnderstandOptions, "mend">> & { mend?: readonly Mend[] } = {},
  kind: PatternDrawing["kind"] = "svg",
): UnderstoodPattern {
  const unit = kind === "dxf" ? { name: "mm", ofMm: 1 } : { name: "px96", ofMm: 25.4 / 96 };
  return understandPattern(
    { kind, unit, lines, marks: [], problems: [] },
    { tolerance: 0.05, roles: new Map(), mend: new Set(mend), ...options },
  );
}

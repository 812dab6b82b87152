import { doubledLines } from "../../core/patterns/doubledLines.ts";
import { curveBox, flattenCurve } from "../../core/patterns/measureCurve.ts";
import type { PatternLine } from "../../core/patterns/patternDrawing.ts";

/** Lines of joined sheets, each once: what reaches over a joint is drawn whole on both. */
export function withoutRepeats(lines: readonly PatternLine[]): readonly PatternLine[] {
  const compared = lines.map(({ curve }) => ({
    points: Float64Array.from(flattenCurve(curve, 0.05, 200)),
    closed: curve.closed,
    box: curveBox(curve),
  }));
  const repeated = doubledLines(compared);
  return lines.filter((_, i) => !repeated.has(i));
}

import type { Ring } from "../geometry/ring.ts";
import { curveArea, curveBox, flattenCurve } from "./measureCurve.ts";
import type { PatternLine } from "./patternDrawing.ts";
import { tidyCurve } from "./tidyCurve.ts";

/** Points for looking, not for cutting: chords within this, mm. */
const LOOK = 0.05;

/** A line on its way to being understood. */
export interface Work {
  readonly line: PatternLine;
  readonly points: Ring;
  readonly box: ReturnType<typeof curveBox>;
  readonly areaMm2: number;
}

/** A line with what is looked at again and again. */
export function workOf(line: PatternLine): Work {
  const curve = tidyCurve(line.curve) ?? line.curve;
  return {
    line: { ...line, curve },
    points: Float64Array.from(flattenCurve(curve, LOOK, 200)),
    box: curveBox(curve),
    areaMm2: curve.closed ? Math.abs(curveArea(curve)) : 0,
  };
}

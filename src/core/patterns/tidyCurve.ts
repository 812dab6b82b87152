import { type Curve, type CurvePart, curveEnd, reversedCurve } from "./curve.ts";
import { SNAP } from "./joinLines.ts";
import { curveArea } from "./measureCurve.ts";

/** Steps shorter than this are rounding, mm. */
const NOTHING = 1e-6;

/**
 * The curve without steps of no length and without repeated corners; a closed one counter-clockwise, its way back to
 * the start left to `closed`. Null when nothing is left.
 */
export function tidyCurve(curve: Curve): Curve | null {
  const parts: CurvePart[] = [];
  let x = curve.x;
  let y = curve.y;
  for (const part of curve.parts) {
    const step = Math.hypot(part.x - x, part.y - y);
    if (step > NOTHING || (part.kind !== "straight" && reach(part, x, y) > NOTHING)) {
      parts.push(part);
      x = part.x;
      y = part.y;
    }
  }
  if (parts.length === 0) return null;
  const tidy = { x: curve.x, y: curve.y, parts, closed: curve.closed };
  if (!curve.closed) return tidy;
  const [endX, endY] = curveEnd(tidy);
  const last = parts.at(-1)!;
  if (Math.hypot(endX - curve.x, endY - curve.y) <= SNAP) {
    // A straight way back to where it started is what "closed" means; a bowed one has to end there.
    if (last.kind === "straight" && parts.length > 1) parts.pop();
    else parts[parts.length - 1] = { ...last, x: curve.x, y: curve.y };
  }
  return curveArea(tidy) < 0 ? reversedCurve(tidy) : tidy;
}

function reach(part: Exclude<CurvePart, { kind: "straight" }>, x: number, y: number): number {
  if (part.kind === "arc")
    return Math.hypot(part.ux, part.uy, part.vx, part.vy) * Math.min(1, Math.abs(part.sweep));
  return Math.max(Math.hypot(part.x1 - x, part.y1 - y), Math.hypot(part.x2 - x, part.y2 - y));
}

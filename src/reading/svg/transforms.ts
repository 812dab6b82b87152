import { type Affine, SAME, scaling, shift, thenAffine, turning } from "../../core/geometry/affine.ts";
import { lengthPx } from "./lengths.ts";

const CALL = /\s*(?:,\s*)?([a-z0-9]+)\s*\(([^()]*)\)/giy;
const ANGLE = /^([-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?)(deg|rad|grad|turn)?$/iu;
const TURN_DEG: Readonly<Record<string, number>> = { deg: 1, rad: 180 / Math.PI, grad: 0.9, turn: 360 };

/**
 * The map of a `transform` attribute or CSS property; the rightmost is applied first. Null when it cannot be read,
 * and then nothing is turned or moved, as the standard wants it.
 * Source: CSS Transforms 1, 8 and 12 (functions, the SVG attribute's grammar).
 */
export function transformOf(text: string | undefined): Affine | null {
  if (text === undefined || text.trim() === "" || text.trim() === "none") return SAME;
  let map = SAME;
  CALL.lastIndex = 0;
  let end = 0;
  for (let call = CALL.exec(text); call !== null; call = CALL.exec(text)) {
    end = CALL.lastIndex;
    const one = functionOf(call[1]!.toLowerCase(), call[2]!.trim().split(/[\s,]+/u));
    if (one === null) return null;
    map = thenAffine(one, map);
  }
  return text.slice(end).trim() === "" ? map : null;
}

function functionOf(name: string, given: readonly string[]): Affine | null {
  const isAngle = name === "rotate" || name.startsWith("skew");
  const numbers = given.map((text, i) =>
    isAngle && (i === 0 || name === "skew") ? angleDeg(text) : lengthPx(text, 0),
  );
  if (numbers.some((value) => value === null || !Number.isFinite(value))) return null;
  const [a, b, c, d, e, f] = numbers as number[];
  if (a === undefined) return null;
  const radians = (a * Math.PI) / 180;
  switch (name) {
    case "matrix":
      return f === undefined ? null : [a, b!, c!, d!, e!, f];
    case "translate":
      return shift(a, b ?? 0);
    case "translatex":
      return shift(a, 0);
    case "translatey":
      return shift(0, a);
    case "scale":
      return scaling(a, b ?? a);
    case "scalex":
      return scaling(a, 1);
    case "scaley":
      return scaling(1, a);
    case "rotate":
      return b === undefined
        ? turning(radians)
        : thenAffine(thenAffine(shift(-b, -(c ?? 0)), turning(radians)), shift(b, c ?? 0));
    case "skewx":
      return [1, 0, Math.tan(radians), 1, 0, 0];
    case "skewy":
      return [1, Math.tan(radians), 0, 1, 0, 0];
    case "skew":
      return [1, Math.tan(((b ?? 0) * Math.PI) / 180), Math.tan(radians), 1, 0, 0];
    default:
      return null;
  }
}

function angleDeg(text: string): number | null {
  const found = ANGLE.exec(text);
  return found ? Number(found[1]) * TURN_DEG[(found[2] ?? "deg").toLowerCase()]! : null;
}

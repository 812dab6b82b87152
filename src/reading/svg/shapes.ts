import { arcPart, type Curve, type CurvePart } from "../../core/patterns/curve.ts";
import { lengthPx } from "./lengths.ts";
import { pathData } from "./pathData.ts";

/** Size of the viewport that percentages refer to, user units. */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** What an element draws, in its own coordinates; `brokenAt` as of path data. */
export interface DrawnShape {
  readonly curves: readonly Curve[];
  readonly brokenAt: number | null;
}

/** Looks up an attribute or the property of the same name. */
type Get = (name: string) => string | undefined;

/** Elements that draw lines. */
export const SHAPES: ReadonlySet<string> = new Set([
  "path",
  "rect",
  "circle",
  "ellipse",
  "line",
  "polyline",
  "polygon",
]);

/** The lines of a basic shape. Source: SVG 2, 10 (basic shapes, with their equivalent paths). */
export function shapeLines(name: string, get: Get, viewport: Viewport): DrawnShape {
  const x = (key: string): number => lengthPx(get(key), viewport.width) ?? 0;
  const y = (key: string): number => lengthPx(get(key), viewport.height) ?? 0;
  const across = (key: string): number | null =>
    lengthPx(get(key), Math.hypot(viewport.width, viewport.height) / Math.SQRT2);
  switch (name) {
    case "path":
      return pathData(pathText(get("d")));
    case "rect":
      return whole(rectangle(x("x"), y("y"), x("width"), y("height"), radii(get, viewport)));
    case "circle":
      return whole(ellipse(x("cx"), y("cy"), across("r") ?? 0, across("r") ?? 0));
    case "ellipse": {
      const [rx, ry] = radii(get, viewport);
      return whole(ellipse(x("cx"), y("cy"), rx ?? ry ?? 0, ry ?? rx ?? 0));
    }
    case "line":
      return whole([
        { x: x("x1"), y: y("y1"), parts: [{ kind: "straight", x: x("x2"), y: y("y2") }], closed: false },
      ]);
    default:
      return polyline(get("points") ?? "", name === "polygon");
  }
}

const whole = (curves: readonly Curve[]): DrawnShape => ({ curves, brokenAt: null });

/** As an attribute, or as the CSS property `d: path("…")`. */
function pathText(text = ""): string {
  return /^\s*path\(\s*["']([\s\S]*)["']\s*\)\s*$/u.exec(text)?.[1] ?? (text.trim() === "none" ? "" : text);
}

/** rx and ry; null where they follow one another (`auto` or not given). */
function radii(get: Get, viewport: Viewport): readonly [number | null, number | null] {
  const one = (key: string, of: number): number | null => {
    const value = lengthPx(get(key), of);
    return value === null || value < 0 ? null : value;
  };
  return [one("rx", viewport.width), one("ry", viewport.height)];
}

const HALF_TURN = Math.PI;
const QUARTER = Math.PI / 2;

function ellipse(cx: number, cy: number, rx: number, ry: number): Curve[] {
  if (!(rx > 0 && ry > 0)) return [];
  const half = (from: number, to: number) => arcPart([cx, cy], [rx, 0], [0, ry], from, HALF_TURN, [to, cy]);
  return [{ x: cx + rx, y: cy, parts: [half(0, cx - rx), half(HALF_TURN, cx + rx)], closed: true }];
}

function rectangle(
  x: number,
  y: number,
  width: number,
  height: number,
  [givenX, givenY]: readonly [number | null, number | null],
): Curve[] {
  if (!(width > 0 && height > 0)) return [];
  const rx = Math.min(givenX ?? givenY ?? 0, width / 2);
  const ry = Math.min(givenY ?? givenX ?? 0, height / 2);
  const right = x + width;
  const bottom = y + height;
  if (rx === 0 || ry === 0) {
    const corners = [[right, y] as const, [right, bottom] as const, [x, bottom] as const];
    return [{ x, y, parts: corners.map(([px, py]) => ({ kind: "straight", x: px, y: py })), closed: true }];
  }
  const parts: CurvePart[] = [];
  let at = [x + rx, y] as readonly [number, number];
  const to = (px: number, py: number): void => {
    if (px !== at[0] || py !== at[1]) parts.push({ kind: "straight", x: px, y: py });
    at = [px, py];
  };
  const corner = (cx: number, cy: number, from: number, px: number, py: number): void => {
    parts.push(arcPart([cx, cy], [rx, 0], [0, ry], from, QUARTER, [px, py]));
    at = [px, py];
  };
  to(right - rx, y);
  corner(right - rx, y + ry, -QUARTER, right, y + ry);
  to(right, bottom - ry);
  corner(right - rx, bottom - ry, 0, right - rx, bottom);
  to(x + rx, bottom);
  corner(x + rx, bottom - ry, QUARTER, x, bottom - ry);
  to(x, y + ry);
  corner(x + rx, y + ry, HALF_TURN, x + rx, y);
  return [{ x: x + rx, y, parts, closed: true }];
}

/** Points up to the first that is none; an odd number at the end is left out. */
function polyline(text: string, closed: boolean): DrawnShape {
  const words = text.trim() === "" ? [] : text.trim().split(/[\s,]+|(?<=[\d.])(?=[-+])/u);
  const numbers: number[] = [];
  for (const word of words) {
    const value = Number(word);
    if (word === "" || !Number.isFinite(value)) break;
    numbers.push(value);
  }
  const isBroken = numbers.length < words.length || numbers.length % 2 === 1;
  const brokenAt = isBroken ? numbers.length : null;
  if (numbers.length < 4) return { curves: [], brokenAt };
  const parts: CurvePart[] = [];
  for (let i = 2; i + 1 < numbers.length; i += 2)
    parts.push({ kind: "straight", x: numbers[i]!, y: numbers[i + 1]! });
  return { curves: [{ x: numbers[0]!, y: numbers[1]!, parts, closed }], brokenAt };
}

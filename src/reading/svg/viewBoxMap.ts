import type { Affine } from "../../core/geometry/affine.ts";

/** Where an `svg` or `symbol` lies and how large it is shown, user units of what holds it. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The four numbers of a `viewBox`; null when they are not there or wrong. A width or height of 0 shows nothing. */
export function readViewBox(text: string | undefined): Frame | null {
  const numbers = (text ?? "")
    .trim()
    .split(/[\s,]+/u)
    .map(Number);
  const [x, y, width, height] = numbers;
  if (numbers.length !== 4 || numbers.some((value) => !Number.isFinite(value))) return null;
  return width! < 0 || height! < 0 ? null : { x: x!, y: y!, width: width!, height: height! };
}

/**
 * The map from the coordinates in a `viewBox` to those around its element.
 * Source: SVG 2, 8.2 (computing the equivalent transform of an SVG viewport) and 8.7 (preserveAspectRatio).
 */
export function viewBoxMap(box: Frame, frame: Frame, aspect: string | undefined): Affine {
  let scaleX = frame.width / box.width;
  let scaleY = frame.height / box.height;
  const words = (aspect ?? "")
    .trim()
    .split(/\s+/u)
    .filter((word) => word !== "defer");
  const align = /^x(Min|Mid|Max)Y(Min|Mid|Max)$/u.exec(words[0] ?? "");
  let x = 0;
  let y = 0;
  if (words[0] !== "none") {
    const scale = words[1] === "slice" ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
    scaleX = scale;
    scaleY = scale;
    x = (frame.width - scale * box.width) * SHARE[align?.[1] ?? "Mid"]!;
    y = (frame.height - scale * box.height) * SHARE[align?.[2] ?? "Mid"]!;
  }
  return [scaleX, 0, 0, scaleY, frame.x + x - box.x * scaleX, frame.y + y - box.y * scaleY];
}

const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

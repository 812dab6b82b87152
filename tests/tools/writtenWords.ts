// Words on pages and pictures as the font that pages embed draws them, measured by fontkit: where their ink is, which
// of them run into each other, and what is no longer read.
import fontkit from "@pdf-lib/fontkit";
import type { Drawing, DrawingItem, DrawnText } from "../../src/core/drawing/list/drawing.ts";
import type { Page } from "../../src/core/drawing/list/page.ts";
import type { Box } from "../../src/core/geometry/box.ts";
import { FONTS } from "./samplePlan.ts";

const faces = [fontkit.create(FONTS.regular), fontkit.create(FONTS.bold)] as const;
const inks = new Map<string, { readonly ink: Box; readonly advance: number }>();

/** A text and where its ink is, mm of the paper or picture. */
export interface Written extends Box {
  readonly text: string;
  /** Height of its letters on the paper, mm. */
  readonly size: number;
  readonly bold: boolean;
  /** Where its baseline begins. */
  readonly x: number;
  readonly y: number;
}

/** Ink of a text at height 1 from its baseline's beginning, and how far its pen goes. */
function inkOf(text: string, bold: boolean): { readonly ink: Box; readonly advance: number } {
  const key = `${bold} ${text}`;
  const known = inks.get(key);
  if (known !== undefined) return known;
  const font = faces[bold ? 1 : 0];
  const { advanceWidth, bbox } = font.layout(text);
  const [minX, minY, maxX, maxY] = [bbox.minX, bbox.minY, bbox.maxX, bbox.maxY].map((n) => n / font.unitsPerEm);
  const made = {
    ink: { minX: minX!, minY: minY!, maxX: maxX!, maxY: maxY! },
    advance: advanceWidth / font.unitsPerEm,
  };
  inks.set(key, made);
  return made;
}

function written(item: DrawnText, scale: number, left: number, low: number): Written {
  const { text, size, anchor, turnDeg, bold = false } = item;
  const { ink, advance } = inkOf(text, bold);
  const back = { start: 0, middle: advance / 2, end: advance }[anchor];
  const high = size * scale;
  const [x, y] = [left + item.x * scale, low + item.y * scale];
  const along = [(ink.minX - back) * high, (ink.maxX - back) * high] as const;
  const up = [ink.minY * high, ink.maxY * high] as const;
  const box =
    turnDeg === 90
      ? { minX: x - up[1], maxX: x - up[0], minY: y + along[0], maxY: y + along[1] }
      : { minX: x + along[0], maxX: x + along[1], minY: y + up[0], maxY: y + up[1] };
  return { text, size: high, bold, x: x - back * high, y, ...box };
}

/** Texts of a picture. */
export function wordsOf({ items }: Drawing): Written[] {
  return items.flatMap((item) => (item.kind === "text" && item.text !== "" ? [written(item, 1, 0, 0)] : []));
}

/** Texts of a page, mm of the paper. */
export function wordsOn({ parts }: Page): Written[] {
  return parts.flatMap(({ items, x, y, scaleX }) =>
    items.flatMap((item) => (item.kind === "text" && item.text !== "" ? [written(item, scaleX, x, y)] : [])),
  );
}

/** Pairs of texts whose ink meets. */
export function runTogether(texts: readonly Written[]): string[] {
  return texts.flatMap((one, i) =>
    texts
      .slice(i + 1)
      .filter(
        (other) => one.minX < other.maxX && other.minX < one.maxX && one.minY < other.maxY && other.minY < one.maxY,
      )
      .map((other) => `${one.text} / ${other.text}`),
  );
}

/** Texts whose ink is not all within a box. */
export function standOut(texts: readonly Written[], box: Box): string[] {
  return texts
    .filter(
      ({ minX, minY, maxX, maxY }) => minX < box.minX || minY < box.minY || maxX > box.maxX || maxY > box.maxY,
    )
    .map(({ text }) => text);
}

/** Corners of the lines of a drawing by role, flat and rounded to a thousandth: `x y` of each, in order. */
export function linesOf(items: readonly DrawingItem[], role: string): string[] {
  return items.flatMap((item) =>
    item.kind === "line" && item.role === role ? [corners(item.contour.vertices)] : [],
  );
}

/** Corners of areas of a tone, as `linesOf` gives those of lines. */
export function areasOf(items: readonly DrawingItem[], tone: string): string[] {
  return items.flatMap((item) =>
    item.kind === "area" && item.tone === tone ? item.contours.map(({ vertices }) => corners(vertices)) : [],
  );
}

const thousandths = (value: number): number => Math.round(value * 1000) / 1000 + 0;

const corners = (vertices: Float64Array): string =>
  Array.from({ length: vertices.length / 3 }, (_, i) =>
    [vertices[3 * i]!, vertices[3 * i + 1]!].map(thousandths).join(" "),
  ).join(", ");

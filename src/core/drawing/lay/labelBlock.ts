import type { Contour } from "../../geometry/contour.ts";
import { segmentContour, straightContour } from "../../geometry/contourShapes.ts";
import type { DrawingItem } from "../list/drawing.ts";
import { drawLine, drawText } from "../list/items.ts";
import { textWidth } from "../list/textWidth.ts";

/** Which way grain arrows point: one head when the cloth is one-way, none when its direction does not matter. */
export type GrainArrow = "both" | "one-way" | "none";

const LEADING = 1.3;

/** The second line is smaller than the name. */
export const sizeOf = (size: number, line: number): number => (line === 0 ? size : size * 0.8);
export const blockHeight = (size: number, lines: number): number =>
  LEADING * size * (lines === 1 ? 1 : 1 + 0.8 * (lines - 1));

/** The lines of a label and its grain arrow about a place, level or reading upward; `room` is how wide it may be. */
export function labelBlock(
  text: readonly string[],
  at: { readonly x: number; readonly y: number },
  size: number,
  turned: boolean,
  grain: GrainArrow,
  owner: string,
  room: number,
): DrawingItem[] {
  const items: DrawingItem[] = [];
  const height = blockHeight(size, text.length) + (grain === "none" ? 0 : size);
  // `down` runs from the top of the block; (0, −1) for level text, (1, 0) for text that reads upward.
  const place = (down: number): [number, number] =>
    turned ? [at.x - height / 2 + down, at.y] : [at.x, at.y + height / 2 - down];
  let down = 0;
  text.forEach((line, i) => {
    const em = sizeOf(size, i);
    const [x, y] = place(down + em * 0.95);
    down += em * LEADING;
    items.push(drawText(line, x, y, em, { anchor: "middle", turnDeg: turned ? 90 : 0, bold: i === 0, owner }));
  });
  if (grain === "none") return items;
  // The arrow always lies along the roll. Beside turned text there is only the block's height for it.
  const [x, y] = place(down + size * 0.5);
  if (turned)
    items.push(...grainArrow(at.x, at.y - textHalf(text, size) - size, Math.max(4, height), grain, size, owner));
  else items.push(...grainArrow(x, y, Math.min(room - size, Math.max(40, 6 * size)), grain, size, owner));
  return items;
}

const textHalf = (text: readonly string[], size: number): number =>
  Math.max(...text.map((line, i) => textWidth(line, sizeOf(size, i), i === 0))) / 2;

/** An arrow along the roll, centred on (x, y): two heads, or one when the cloth is one-way. */
function grainArrow(
  x: number,
  y: number,
  length: number,
  grain: GrainArrow,
  size: number,
  owner: string,
): DrawingItem[] {
  const half = length / 2;
  const head = Math.min(size * 0.35, length / 4);
  const tip = (end: number, back: number): Contour =>
    straightContour([end - back * 1.6 * head, y + head / 2, end, y, end - back * 1.6 * head, y - head / 2]);
  const items = [
    drawLine("grain", segmentContour(x - half, y, x + half, y), owner),
    drawLine("grain", tip(x + half, 1), owner),
  ];
  if (grain === "both") items.push(drawLine("grain", tip(x - half, -1), owner));
  return items;
}

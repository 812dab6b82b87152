import { rectangleContour, straightContour } from "../../geometry/contourShapes.ts";
import type { Polygon } from "../../geometry/ring.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { textWidth } from "../list/textWidth.ts";

/** A strip as it lies: its box on the cloth, mm, and what is written on it. */
export interface LaidStrip {
  readonly x: number;
  readonly y: number;
  readonly along: number;
  readonly across: number;
  readonly label: string;
}

/** Width of the pictures, height of letters and the least that can be read, mm. */
const WIDE = 180;
const TEXT = 3;
const LEAST_TEXT = 1.4;
const MARGIN = 6;

/** Strips on a piece of cloth of any outline with its flaws, drawn to fit a sheet; `caption` stands below. */
export function yieldPlanPicture(
  cloth: Polygon,
  flaws: readonly Polygon[],
  strips: readonly LaidStrip[],
  caption: string,
): Drawing {
  const xs = cloth.outer.filter((_, i) => i % 2 === 0);
  const ys = cloth.outer.filter((_, i) => i % 2 === 1);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(1, (WIDE - 2 * MARGIN) / (maxX - minX));
  const bottom = MARGIN + 2 * TEXT;
  const at = (ring: ArrayLike<number>): ReturnType<typeof straightContour> =>
    straightContour(
      Array.from(ring, (value, i) =>
        i % 2 === 0 ? MARGIN + (value - minX) * scale : bottom + (value - minY) * scale,
      ),
      true,
    );
  const whole = [cloth.outer, ...cloth.holes].map(at);
  const items: DrawingItem[] = [drawArea("cloth", whole), ...whole.map((one) => drawLine("mark", one))];
  for (const flaw of flaws) items.push(drawArea("flaw", [at(flaw.outer)]), drawLine("mark", at(flaw.outer)));
  for (const { x, y, along, across, label } of strips) {
    const box = rectangleContour(
      MARGIN + (x - minX) * scale,
      bottom + (y - minY) * scale,
      along * scale,
      across * scale,
    );
    items.push(drawArea("piece", [box]), drawLine("cut", box));
    const [wide, high] = [along * scale, across * scale];
    // SVG knows no turned text without a transform: letters shrink to what the strip leaves them.
    const size = Math.min(TEXT, 0.7 * high, (0.92 * wide) / textWidth(label, 1));
    if (size < LEAST_TEXT) continue;
    const [cx, cy] = [MARGIN + (x - minX) * scale + wide / 2, bottom + (y - minY) * scale + high / 2];
    items.push(drawText(label, cx, cy - size * 0.35, size, { anchor: "middle" }));
  }
  items.push(drawText(caption, MARGIN, MARGIN, TEXT));
  const width = Math.max(WIDE, 2 * MARGIN + textWidth(caption, TEXT));
  return { box: { minX: 0, minY: 0, maxX: width, maxY: bottom + (maxY - minY) * scale + MARGIN }, items };
}

/** From this length on, so many; what is written beside the step. */
export interface CurveStep {
  readonly length: number;
  readonly count: number;
  readonly label: string;
}

/** Room of the curve's own field, mm. */
const HIGH = 90;
const LEFT = 14;
const BOTTOM = 16;

/**
 * A count that climbs in steps, drawn from the first step's length to `to`: a step is level till the next length that
 * gives more, and labelled where there is room. `axis` names the two directions; `width`, mm: letters are 3 mm high in
 * any.
 */
export function yieldCurvePicture(
  steps: readonly CurveStep[],
  to: number,
  axis: { readonly length: string; readonly count: string },
  width: number = WIDE,
): Drawing {
  const [first, last] = [steps[0]!, steps.at(-1)!];
  // A little more than what was asked for, so that a step at the very end has a tread.
  const end = Math.max(to, last.length) + 0.04 * Math.max(to - first.length, 1e-9);
  const span = end - first.length;
  const least = first.count;
  const rise = Math.max(1, last.count - least);
  const wide = width - LEFT - MARGIN;
  const x = (length: number): number => LEFT + ((length - first.length) / span) * wide;
  const y = (count: number): number => BOTTOM + 4 + ((count - least) / rise) * (HIGH - 8);
  const points = steps.flatMap(({ length, count }, i) => {
    return [x(length), y(count), x(steps[i + 1]?.length ?? end), y(count)];
  });
  const items: DrawingItem[] = [
    drawLine("mark", straightContour([LEFT, BOTTOM + HIGH, LEFT, BOTTOM, LEFT + wide, BOTTOM])),
    drawLine("cut", straightContour(points)),
    drawText(axis.count, LEFT, BOTTOM + HIGH + 2, TEXT, { bold: true }),
    drawText(axis.length, LEFT + wide, MARGIN - 2, TEXT, { anchor: "end", bold: true }),
  ];
  let free = Number.NEGATIVE_INFINITY;
  let low = Number.NEGATIVE_INFINITY;
  for (const [i, { length, count, label }] of steps.entries()) {
    const before = steps[i - 1];
    if (before !== undefined && y(count) - y(before.count) > TEXT)
      items.push(drawText(`+${count - before.count}`, x(length) - 1, y(count) - TEXT, TEXT, { anchor: "end" }));
    items.push(drawLine("label", straightContour([x(length), BOTTOM, x(length), BOTTOM - 1])));
    if (y(count) - low >= TEXT * 1.1) {
      items.push(drawText(String(count), LEFT - 2, y(count) - TEXT * 0.35, TEXT, { anchor: "end" }));
      low = y(count);
    }
    const half = textWidth(label, TEXT) / 2;
    const middle = Math.min(Math.max(x(length), LEFT + half), LEFT + wide - half);
    if (middle - half < free) continue;
    items.push(drawText(label, middle, BOTTOM - 5, TEXT, { anchor: "middle" }));
    free = middle + half + 2;
  }
  return { box: { minX: 0, minY: 0, maxX: width, maxY: BOTTOM + HIGH + 8 }, items };
}

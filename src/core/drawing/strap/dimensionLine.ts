import { straightContour } from "../../geometry/contourShapes.ts";
import type { InchStep } from "../../materials/material.ts";
import { formatLength } from "../../units/formatLength.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import type { DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { textWidth } from "../list/textWidth.ts";

const ARROW = 1.6;
const OVERSHOOT = 1;

/** Below half a division of the ruler its fraction says nothing, mm. */
const LEAST_FRACTION: Readonly<Record<InchStep, number>> = { "in/16": 25.4 / 32, "in/32": 25.4 / 64 };

/** A length as it stands on pictures, with inches as fine as the material can be measured; null for none. */
export function lengthLabel(mm: number, inches: InchStep | null, language: string): string {
  const metric = formatLength(mm, "mm", language);
  if (inches === null || Math.abs(mm) < LEAST_FRACTION[inches]) return metric;
  return `${metric} (${formatLength(mm, inches)})`;
}

/** A thickness; inches, where they are asked for, in thousandths: no ruler's fraction tells one layer from another. */
export function thicknessLabel(mm: number, inches: InchStep | null, language: string): string {
  const metric = formatLength(mm, "mm", language);
  return inches === null ? metric : `${metric} (${withDecimalSign((mm / 25.4).toFixed(3), language)} in)`;
}

function arrow(x: number, y: number, dx: number, dy: number): DrawingItem {
  const half = ARROW / 4;
  const points = [
    x,
    y,
    x + ARROW * dx + half * dy,
    y + ARROW * dy + half * dx,
    x + ARROW * dx - half * dy,
    y + ARROW * dy - half * dx,
  ];
  return drawArea("ink", [straightContour(points, true)]);
}

/**
 * Dimension between two points level with each other: extension lines from `fromY`, arrows, and its text above the
 * line or, when there is no room, to the right of it. Drawing mm.
 */
export function levelDimension(
  x0: number,
  x1: number,
  fromY: number,
  y: number,
  text: string,
  size: number,
): DrawingItem[] {
  const away = y < fromY ? -1 : 1;
  const end = y + away * OVERSHOOT;
  const room = x1 - x0 > textWidth(text, size) + 2;
  const inside = x1 - x0 > 3 * ARROW;
  const items: DrawingItem[] = [
    drawLine("label", straightContour([x0, fromY, x0, end])),
    drawLine("label", straightContour([x1, fromY, x1, end])),
  ];
  if (inside) {
    items.push(drawLine("label", straightContour([x0, y, x1, y])), arrow(x0, y, 1, 0), arrow(x1, y, -1, 0));
  } else {
    items.push(
      drawLine("label", straightContour([x0 - 2 * ARROW, y, x1 + 2 * ARROW, y])),
      arrow(x0, y, -1, 0),
      arrow(x1, y, 1, 0),
    );
  }
  if (room) items.push(drawText(text, (x0 + x1) / 2, y + 1, size, { anchor: "middle" }));
  else items.push(drawText(text, x1 + (inside ? 1 : 2 * ARROW + 1), y - size * 0.35, size));
  return items;
}

/** Dimension between two heights, right of `x`, its text beside it. Drawing mm. */
export function uprightDimension(x: number, y0: number, y1: number, text: string, size: number): DrawingItem[] {
  const inside = y1 - y0 > 3 * ARROW;
  const line = inside ? [x, y0, x, y1] : [x, y0 - 2 * ARROW, x, y1 + 2 * ARROW];
  return [
    drawLine("label", straightContour([x - OVERSHOOT, y0, x + OVERSHOOT, y0])),
    drawLine("label", straightContour([x - OVERSHOOT, y1, x + OVERSHOOT, y1])),
    drawLine("label", straightContour(line)),
    arrow(x, y0, 0, inside ? 1 : -1),
    arrow(x, y1, 0, inside ? -1 : 1),
    drawText(text, x + 2, (y0 + y1) / 2 - size * 0.35, size),
  ];
}

import { type Box, boxOfAll, grownBox } from "../../geometry/box.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import type { DrawingItem, DrawnText } from "./drawing.ts";
import { textWidth } from "./textWidth.ts";

const boxes = new WeakMap<DrawingItem, Box>();

/** Whether an item is worth ink: of filled areas the cloth's pattern alone, as the paper itself is the piece. */
export function isInked(item: DrawingItem): boolean {
  return item.kind !== "area" || item.tone === "pattern";
}

/** Box of an item with room for its line width; texts by a generous estimate. Kept, as every sheet asks again. */
export function itemBox(item: DrawingItem): Box {
  const known = boxes.get(item);
  if (known) return known;
  const box = item.kind === "text" ? textBox(item) : grownBox(unionBox(item), 1);
  boxes.set(item, box);
  return box;
}

function unionBox(item: Exclude<DrawingItem, DrawnText>): Box {
  const contours = item.kind === "line" ? [item.contour] : item.contours;
  return boxOfAll(contours.map(contourBox));
}

function textBox(item: DrawnText): Box {
  // Characters without a glyph are written as up to eight others.
  const reach = Math.max(textWidth(item.text, item.size, true), item.text.length * item.size) + item.size;
  return grownBox({ minX: item.x, minY: item.y, maxX: item.x, maxY: item.y }, reach);
}

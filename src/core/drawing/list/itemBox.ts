import { contourBox } from "../../geometry/contourArcs.ts";
import type { Box } from "../../geometry/ring.ts";
import type { DrawingItem, DrawnText } from "./drawing.ts";
import { textWidth } from "./textWidth.ts";

const boxes = new WeakMap<DrawingItem, Box>();

/** Box of an item with room for its line width; texts by a generous estimate. Kept, as every sheet asks again. */
export function itemBox(item: DrawingItem): Box {
  const known = boxes.get(item);
  if (known) return known;
  const box = item.kind === "text" ? textBox(item) : grown(unionBox(item), 1);
  boxes.set(item, box);
  return box;
}

function unionBox(item: Exclude<DrawingItem, DrawnText>): Box {
  const contours = item.kind === "line" ? [item.contour] : item.contours;
  const all = contours.map(contourBox);
  return {
    minX: Math.min(...all.map((box) => box.minX)),
    minY: Math.min(...all.map((box) => box.minY)),
    maxX: Math.max(...all.map((box) => box.maxX)),
    maxY: Math.max(...all.map((box) => box.maxY)),
  };
}

function textBox(item: DrawnText): Box {
  // Characters without a glyph are written as up to eight others.
  const reach = Math.max(textWidth(item.text, item.size, true), item.text.length * item.size) + item.size;
  return grown({ minX: item.x, minY: item.y, maxX: item.x, maxY: item.y }, reach);
}

function grown(box: Box, by: number): Box {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}

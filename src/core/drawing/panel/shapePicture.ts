import { grownBox, joinedBox } from "../../geometry/box.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { segmentContour, straightContour } from "../../geometry/contourShapes.ts";
import { SHAPES, type ShapeId } from "../../panels/shapes/registry.ts";
import type { Dimension, DimensionPlace, Sizes } from "../../panels/shapes/shapeRecord.ts";
import type { PanelWords } from "../../words/panelWords.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { textWidth } from "../list/textWidth.ts";

/** Sizes that a long strip is drawn with, so that its names have room. */
const SHORT: Readonly<Record<string, number>> = { length: 300, width: 60, cord: 12, seam: 22 };
const STRIPS: readonly ShapeId[] = ["binding", "bias-binding", "piping"];

/** Sizes a shape is shown with when no others are given. */
export function usualSizes(shape: ShapeId): Sizes {
  const all: Record<string, number> = {};
  for (const { id, usual } of SHAPES[shape].dimensions)
    all[id] = (STRIPS.includes(shape) ? SHORT[id] : undefined) ?? usual;
  return all as Sizes;
}

/**
 * A shape with each of its dimensions named beside the way it is measured, letters as high as its size asks.
 * Units: mm.
 */
export function shapePicture(shape: ShapeId, words: PanelWords, sizes: Sizes = usualSizes(shape)): Drawing | null {
  const record = SHAPES[shape];
  const made = record.outline(sizes);
  if (!("contour" in made)) return null;
  const box = contourBox(made.contour);
  const extent = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const size = extent / 22;
  const items: DrawingItem[] = [
    drawArea("piece", [made.contour]),
    ...made.lines.map(({ role, contour }) => drawLine(role, contour)),
    drawLine("cut", made.contour),
    ...record.places(sizes).flatMap((place) => dimensionItems(place, record.dimensions, words, size)),
  ];
  const reach = items.reduce((all, item) => {
    if (item.kind !== "text") return all;
    const width = textWidth(item.text, item.size);
    const left = item.x - { start: 0, middle: width / 2, end: width }[item.anchor];
    const { y, size: high } = item;
    return joinedBox(all, { minX: left, maxX: left + width, minY: y - high / 2, maxY: y + high });
  }, box);
  return { box: grownBox(reach, size), items };
}

/** The way that is measured, with ticks at its ends, and the dimension's name along it. */
function dimensionItems(
  { dimension, from, to, off, half }: DimensionPlace,
  dimensions: readonly Dimension[],
  words: PanelWords,
  size: number,
): DrawingItem[] {
  if (!dimensions.some(({ id }) => id === dimension))
    throw new RangeError(`shapePicture: no dimension ${dimension}`);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0) return [];
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  // To the left of the way, one and a half letters away.
  const away = off * 1.2 * size;
  const shift = ([x, y]: readonly [number, number]): [number, number] => [x - uy * away, y + ux * away];
  const [a, b] = [shift(from), shift(to)];
  const tick = ([x, y]: readonly [number, number]) => {
    const r = size / 2;
    return drawLine("label", segmentContour(x - uy * r, y + ux * r, x + uy * r, y - ux * r));
  };
  const upright = Math.abs(uy) > Math.abs(ux);
  const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const name = half ? `½ ${words.dimensions[dimension]}` : words.dimensions[dimension];
  // Beside the line, away from the shape: below a line that runs below it, left of one on its left.
  const out = off === 0 ? 1 : off * (upright ? (uy > 0 ? 1 : -1) : ux > 0 ? 1 : -1);
  const left = out > 0 && off !== 0;
  const text = upright
    ? drawText(name, x + (left ? -0.5 : 0.5) * size, y - 0.35 * size, size, { anchor: left ? "end" : "start" })
    : drawText(name, x, y + (out > 0 ? 0.4 * size : -1.1 * size), size, { anchor: "middle" });
  return [drawLine("label", straightContour([...a, ...b])), tick(a), tick(b), text];
}

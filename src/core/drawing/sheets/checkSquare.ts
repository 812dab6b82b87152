import { type Box, boxesMeet } from "../../geometry/box.ts";
import { contourBox, flattenContour } from "../../geometry/contourArcs.ts";
import { rectangleContour } from "../../geometry/contourShapes.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { drawLine, drawText } from "../list/items.ts";
import { segmentMeetsBox } from "../list/labelSpot.ts";
import type { Tile } from "./tiling.ts";

/** Side of the small square on every sheet, mm. */
export const CHECK_SIDE = 20;
/** From the joints, so that no match mark or neighbour's name lies in it, mm. */
const AWAY = 5;

interface FlatLine {
  readonly box: Box;
  readonly points: ArrayLike<number>;
}

/** Lines of a drawing, flattened, for `checkSquareSpot`. */
export function flatLines(drawing: Drawing): FlatLine[] {
  return drawing.items.flatMap((item) =>
    item.kind === "line" ? [{ box: contourBox(item.contour), points: flattenContour(item.contour, 0.5) }] : [],
  );
}

/**
 * Lower-left corner of the check square on a sheet, mm of the drawing from its window's corner: the first of its four
 * corners where no line runs through the square, else the lower left. Null on a sheet too small for it.
 */
export function checkSquareSpot(
  tile: Tile,
  overlap: number,
  lines: readonly FlatLine[],
): { readonly x: number; readonly y: number } | null {
  const { minX, minY, maxX, maxY } = tile.window;
  const edge = Math.max(overlap, 3) + AWAY;
  const [farX, farY] = [maxX - minX - edge - CHECK_SIDE, maxY - minY - edge - CHECK_SIDE];
  if (farX < edge || farY < edge) return null;
  const spots = [edge, farY].flatMap((y) => [edge, farX].map((x) => ({ x, y })));
  const isFree = ({ x, y }: { x: number; y: number }): boolean => {
    const box = { minX: minX + x - 1, minY: minY + y - 1, maxX: 0, maxY: 0 };
    const square = { ...box, maxX: box.minX + CHECK_SIDE + 2, maxY: box.minY + CHECK_SIDE + 2 };
    return !lines.some((line) => meets(line, square));
  };
  return spots.find(isFree) ?? spots[0]!;
}

function meets({ box, points }: FlatLine, square: Box): boolean {
  if (!boxesMeet(box, square)) return false;
  const count = points.length;
  for (let i = 0; i < count; i += 2) {
    const next = (i + 2) % count;
    if (segmentMeetsBox(points[i]!, points[i + 1]!, points[next]!, points[next + 1]!, square)) return true;
  }
  return false;
}

/** The square with its size in it. */
export function checkSquareItems(x: number, y: number): DrawingItem[] {
  return [
    drawLine("sheet", rectangleContour(x, y, CHECK_SIDE, CHECK_SIDE)),
    drawText("2 cm", x + CHECK_SIDE / 2, y + CHECK_SIDE / 2 - 0.9, 2.6, { role: "sheet", anchor: "middle" }),
  ];
}

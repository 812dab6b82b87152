import type { Contour } from "../../geometry/contour.ts";
import type { DrawingRole } from "../../project/outputSettings.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { drawText } from "../list/items.ts";
import { labelSpot } from "../list/labelSpot.ts";
import { textWidth } from "../list/textWidth.ts";
import type { LaySheet } from "./layDrawing.ts";

/** The lay of a stock made small, mm on paper. */
export interface LayPicture {
  readonly drawing: Drawing;
  /** Millimetres of cloth to one of paper: a whole number. */
  readonly scale: number;
}

/** Height of the numbers, mm on paper, the largest that a piece has room for. */
const SIZES = [3.2, 2.4, 1.8];
/** Left free above the lay for its title, and below it, mm on paper. */
const ABOVE = 7;
const BELOW = 5;
/** Lines that can be told apart when they are small; of folds the cloth's own. */
const SEEN: ReadonlySet<DrawingRole> = new Set<DrawingRole>(["cut", "cloth", "flaw"]);

/** A lay with its cloth's pattern as a picture no larger than `room`, its pieces numbered by `numbers` (by lay piece). */
export function layPicture(
  { drawing, copies }: LaySheet,
  numbers: ReadonlyMap<string, string>,
  room: { readonly width: number; readonly height: number },
): LayPicture {
  const { minX, minY, maxX, maxY } = drawing.box;
  const scale = Math.max(
    1,
    Math.ceil((maxX - minX) / room.width),
    Math.ceil((maxY - minY) / (room.height - ABOVE - BELOW)),
  );
  const items = drawing.items.flatMap((item): DrawingItem[] => {
    if (item.kind === "area") return [{ ...item, contours: item.contours.map((one) => smaller(one, scale)) }];
    const isSeen = SEEN.has(item.role) || (item.role === "fold" && item.owner === undefined);
    if (item.kind === "text" || !isSeen) return [];
    return [{ ...item, contour: smaller(item.contour, scale) }];
  });
  for (const { pieceId, outline } of copies) {
    const rings = [outline.outer, ...outline.holes].map((ring) => ring.map((mm) => mm / scale));
    const number = numbers.get(pieceId) ?? "";
    for (const size of SIZES) {
      const spot = labelSpot(rings, [], textWidth(number, size, true) + 0.6, size + 0.2);
      if (spot === null) continue;
      items.push(drawText(number, spot.x, spot.y - size * 0.36, size, { anchor: "middle", bold: true }));
      break;
    }
  }
  const [low, high] = [minY / scale - BELOW, maxY / scale + ABOVE];
  const box = { minX: minX / scale, minY: low, maxX: maxX / scale, maxY: high };
  return { drawing: { box, items }, scale };
}

function smaller({ vertices, closed }: Contour, scale: number): Contour {
  return { vertices: vertices.map((value, i) => (i % 3 === 2 ? value : value / scale)), closed };
}

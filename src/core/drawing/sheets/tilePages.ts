import { boxIndex } from "../../geometry/boxIndex.ts";
import { circleContour, segmentContour } from "../../geometry/contourShapes.ts";
import type { Language } from "../../units/language.ts";
import { PAPER_TEXTS } from "../../words/words.ts";
import type { GrainArrow } from "../lay/labelBlock.ts";
import type { LaySheet } from "../lay/layDrawing.ts";
import type { DrawingItem } from "../list/drawing.ts";
import { isInked, itemBox } from "../list/itemBox.ts";
import { drawLine, drawText } from "../list/items.ts";
import type { Page, PagePart } from "../list/page.ts";
import { fitText, plainLine, textWidth } from "../list/textWidth.ts";
import { checkSquareItems, checkSquareSpot, flatLines } from "./checkSquare.ts";
import type { Tile, Tiling } from "./tiling.ts";

/** What the sheets are for, as printed on each, and the language of all their words. */
export interface SheetTitle {
  readonly project: string;
  readonly material: string;
  readonly stock: string;
  readonly language: Language;
}

const TICK = { small: 1.2, five: 2, ten: 2.8 };

/**
 * The pages of a tiling in order, without the map; each shows its window of the drawing at true size. What is on a page
 * is worked out whenever it is asked for and not kept: thousands of sheets at once would fill the memory.
 */
export function tilePages(sheet: LaySheet, tiling: Tiling, title: SheetTitle, grain: GrainArrow): Page[] {
  const linesNear = boxIndex(flatLines(sheet.drawing), ({ box }) => box);
  const lines = jointLines(tiling);
  const inked = sheet.drawing.items.filter(isInked);
  const patternNear = boxIndex(
    inked.filter(({ kind }) => kind === "area"),
    itemBox,
  );
  const itemsNear = boxIndex(
    inked.filter(({ kind }) => kind !== "area"),
    itemBox,
  );
  return tiling.tiles.map((tile, index) => {
    const square = (): DrawingItem[] => {
      const spot = checkSquareSpot(tile, tiling.overlap, linesNear(tile.window));
      return spot ? checkSquareItems(spot.x, spot.y) : [];
    };
    return {
      name: tile.name,
      width: tiling.width,
      height: tiling.height,
      // The drawing lies over the sheet's own marks, so that none of them hides a cut, and the cloth's pattern below all.
      get parts(): PagePart[] {
        const pattern = patternNear(tile.window);
        return [
          ...(pattern.length > 0 ? [windowPart(pattern, tiling, tile)] : []),
          furniturePart(tiling, tile, title, grain, index, [...square(), ...lines(tile)]),
          windowPart(itemsNear(tile.window), tiling, tile),
        ];
      },
    };
  });
}

function windowPart(items: readonly DrawingItem[], tiling: Tiling, tile: Tile): PagePart {
  const { margin, correction, width, height } = tiling;
  return {
    items,
    x: margin - tile.window.minX * correction.x,
    y: margin - tile.window.minY * correction.y,
    scaleX: correction.x,
    scaleY: correction.y,
    clip: { minX: margin, minY: margin, maxX: width - margin, maxY: height - margin },
  };
}

/** Everything around the drawing, in millimetres of the drawing from the window's lower-left corner. */
function furniturePart(
  tiling: Tiling,
  tile: Tile,
  title: SheetTitle,
  grain: GrainArrow,
  index: number,
  lines: readonly DrawingItem[],
): PagePart {
  const { margin, correction, width, height } = tiling;
  const w = tile.window.maxX - tile.window.minX;
  const h = tile.window.maxY - tile.window.minY;
  const size = Math.min(w, h) / 4;
  return {
    items: [
      drawText(tile.name, w / 2, h / 2 - size * 0.36, size, {
        role: "sheet",
        anchor: "middle",
        bold: true,
        tone: "shade",
      }),
      ...lines,
      ...neighbours(tiling, tile, w, h),
      ...tapes(tile, w, h),
      ...words(tiling, tile, title, grain, w, index),
    ],
    x: margin,
    y: margin,
    scaleX: correction.x,
    scaleY: correction.y,
    clip: { minX: margin, minY: margin, maxX: width - margin, maxY: height - margin },
  };
}

/** Frame, joint lines and match marks: drawn once for all sheets that have the same neighbours. */
function jointLines(tiling: Tiling): (tile: Tile) => readonly DrawingItem[] {
  const made = new Map<string, readonly DrawingItem[]>();
  return (tile) => {
    const w = tile.window.maxX - tile.window.minX;
    const h = tile.window.maxY - tile.window.minY;
    const has = [tile.left, tile.right, tile.below, tile.above].map((name) => name !== null);
    const key = [w, h, ...has].join();
    const known = made.get(key);
    if (known) return known;
    const items = frameAndJoints(tiling, tile, w, h);
    made.set(key, items);
    return items;
  };
}

function frameAndJoints(tiling: Tiling, tile: Tile, w: number, h: number): DrawingItem[] {
  const o = tiling.overlap;
  const items: DrawingItem[] = [];
  const line = (x0: number, y0: number, x1: number, y1: number): void => {
    items.push(drawLine("sheet", segmentContour(x0, y0, x1, y1)));
  };
  line(0, 0, w, 0);
  line(w, 0, w, h);
  line(w, h, 0, h);
  line(0, h, 0, 0);
  const ends = [0.2, 0.8];
  if (tile.left) {
    line(o, 0, o, h);
    for (const share of ends) items.push(...matchMark(o / 2, h * share, o));
  }
  if (tile.right) {
    line(w - o, 0, w - o, h);
    for (const share of ends) items.push(...matchMark(w - o / 2, h * share, o));
  }
  if (tile.below) {
    line(0, o, w, o);
    for (const share of ends) items.push(...matchMark(w * share, o / 2, o));
  }
  if (tile.above) {
    line(0, h - o, w, h - o);
    for (const share of ends) items.push(...matchMark(w * share, h - o / 2, o));
  }
  return items;
}

/** The neighbours' names, each beside its joint. */
function neighbours(tiling: Tiling, tile: Tile, w: number, h: number): DrawingItem[] {
  const items: DrawingItem[] = [];
  const name = (text: string, x: number, y: number, anchor: "start" | "middle" | "end"): void => {
    items.push(drawText(text, x, y, 3.2, { role: "sheet", anchor, bold: true }));
  };
  const clear = Math.max(tiling.overlap, 3) + 1.5;
  if (tile.left) name(`‹ ${tile.left}`, clear, h / 2 - 1.1, "start");
  if (tile.right) name(`${tile.right} ›`, w - clear, h / 2 - 1.1, "end");
  if (tile.below) name(`${tile.below} ↓`, w / 2, Math.max(clear, 10.5), "middle");
  if (tile.above) name(`↑ ${tile.above}`, w / 2, h - clear - 2.4, "middle");
  return items;
}

/**
 * A ring with a cross through it in the middle of a joint. Both sheets carry it whole when they overlap, so it can be
 * brought together by eye or against the light; butted sheets carry half of it each.
 */
function matchMark(x: number, y: number, overlap: number): DrawingItem[] {
  const radius = overlap >= 4 ? Math.min(2.6, overlap / 2 - 0.8) : 2.6;
  const arm = radius + 0.8;
  return [
    drawLine("sheet", circleContour(x, y, radius)),
    drawLine("sheet", segmentContour(x - arm, y, x + arm, y)),
    drawLine("sheet", segmentContour(x, y - arm, x, y + arm)),
  ];
}

/** A tape measure along two edges that counts along and across the cloth: centimetres below, inches at the left. */
function tapes(tile: Tile, w: number, h: number): DrawingItem[] {
  const items: DrawingItem[] = [];
  const { minX, minY } = tile.window;
  for (let cm = Math.ceil(minX / 10); cm * 10 <= minX + w; cm++) {
    const x = cm * 10 - minX;
    const long = cm % 10 === 0 ? TICK.ten : cm % 5 === 0 ? TICK.five : TICK.small;
    items.push(drawLine("sheet", segmentContour(x, 0, x, long)));
    if (cm % 5 === 0 && x > 6 && x < w - 8) items.push(drawText(`${cm} cm`, x + 0.6, 1.3, 1.9, { role: "sheet" }));
  }
  for (let inch = Math.ceil(minY / 25.4); inch * 25.4 <= minY + h; inch++) {
    const y = inch * 25.4 - minY;
    items.push(drawLine("sheet", segmentContour(0, y, TICK.ten, y)));
    if (y > 12 && y < h - 4) items.push(drawText(`${inch} in`, 0.6, y + 0.6, 1.9, { role: "sheet" }));
  }
  return items;
}

/** Which sheet this is, what is on it, and which way the cloth runs: one line in the lower band. */
function words(
  tiling: Tiling,
  tile: Tile,
  title: SheetTitle,
  grain: GrainArrow,
  w: number,
  index: number,
): DrawingItem[] {
  const texts = PAPER_TEXTS[title.language].sheets;
  const y = Math.max(4, Math.min(tiling.overlap, 12) / 2 - 0.8);
  const items = [drawText(tile.name, 4, y - 0.6, 4, { bold: true })];
  // Between the two match marks of the lower joint.
  let x = w * 0.2 + 5;
  const end = w * 0.8 - 5;
  const put = (text: string, size: number, bold: boolean, room: number): void => {
    const fitted = fitText(plainLine(text), size, room, bold);
    items.push(drawText(fitted, x, y, size, { role: "label", bold }));
    x += textWidth(fitted, size, bold) + 2.5;
  };
  put(texts.sheet(index + 1, tiling.tiles.length), 2.4, false, 20);
  if (grain !== "none") {
    const way = grain === "one-way" ? `→ ${texts.oneWay}` : `↔ ${texts.lengthwise}`;
    put(way, 2.4, false, 34);
  }
  put(
    [title.project, title.material, title.stock].filter((part) => part !== "").join(" · "),
    2.4,
    false,
    (end - x) * 0.55,
  );
  put(tile.pieces.join(", "), 2.4, true, end - x);
  return items;
}

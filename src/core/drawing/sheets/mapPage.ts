import { type Box, joinedBox } from "../../geometry/box.ts";
import { rectangleContour, segmentContour } from "../../geometry/contourShapes.ts";
import type { Language } from "../../units/language.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { PAPER_TEXTS } from "../../words/words.ts";
import type { LaySheet } from "../lay/layDrawing.ts";
import type { DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { type Page, type PagePart, paperPart } from "../list/page.ts";
import { fitText, plainLine, wrapText } from "../list/textWidth.ts";
import type { SheetTitle } from "./tilePages.ts";
import type { Tiling } from "./tiling.ts";

/** Where the first page puts things, mm from the page's edges inward. */
const INSET = 15;
/** Sides of the test squares, mm: 10 cm and 2 in. */
const SQUARE = 100;
const INCHES = 50.8;
/** Lowest map worth looking at, mm. */
const LEAST_MAP = 40;
/** Narrowest column of words beside the squares, mm. */
const COLUMN = 55;
/** Longest line of words that is read with ease at their size, mm (common practice, no source). */
const MEASURE = 120;

/**
 * The pages before the sheets, on the same paper: test squares, what to do, pieces that are cut by size instead
 * (`bySize`, a line each), and a map of where each sheet goes; words and map go on overleaf when the paper is small.
 */
export function mapPages(
  sheet: LaySheet,
  tiling: Tiling,
  title: SheetTitle,
  bySize: readonly string[] = [],
): Page[] {
  const { width, height, correction } = tiling;
  const texts = PAPER_TEXTS[title.language].map;
  const items: DrawingItem[] = [];
  const heading = [title.material, title.stock].filter((part) => part !== "").join(" · ");
  const room = width - 2 * INSET;
  let top = height - INSET - 6;
  items.push(drawText(fitText(plainLine(title.project), 7, room, true), INSET, top, 7, { bold: true }));
  top -= 6.5;
  items.push(drawText(fitText(plainLine(heading), 4.2, room), INSET, top, 4.2));
  top -= 8;
  const squares = testSquares(INSET, top, correction, texts.eachWay);
  const beside = INSET + (SQUARE + 8) * correction.x;
  const narrow = width - INSET - beside < COLUMN;
  const squareFoot = top - SQUARE * correction.y;
  const textX = narrow ? INSET : beside;
  let y = narrow ? squareFoot - 7 : top - 3;
  const rectangles = bySize.length > 0 ? [texts.bySize, ...bySize] : [];
  const overleaf: DrawingItem[][] = [];
  for (const step of [...steps(tiling, title.language), ...rectangles]) {
    for (const line of wrapText(step, 3.2, Math.min(MEASURE, width - INSET - textX))) {
      if (y < INSET) {
        overleaf.push([]);
        y = height - INSET - 3.2;
      }
      const [page, x] = overleaf.length === 0 ? [items, textX] : [overleaf.at(-1)!, INSET];
      page.push(drawText(line, x, y, 3.2));
      y -= 4.4;
    }
    y -= 1.2;
  }
  const mapTop = overleaf.length > 0 ? INSET : Math.min(squareFoot, y) - 6;
  const first = [paperPart(items), squares];
  const frame = { minX: INSET, minY: INSET, maxX: width - INSET };
  if (mapTop - INSET >= LEAST_MAP) {
    const map = miniature(sheet, tiling, { ...frame, maxY: mapTop });
    return [{ name: "map", width, height, parts: [...first, ...map] }];
  }
  const map = miniature(sheet, tiling, { ...frame, maxY: height - INSET });
  return [
    { name: "test squares", width, height, parts: first },
    ...overleaf.map((words) => ({ name: "words", width, height, parts: [paperPart(words)] })),
    { name: "map", width, height, parts: map },
  ];
}

/** How to put the sheets together, one sentence a line. */
function steps(tiling: Tiling, language: Language): string[] {
  const texts = PAPER_TEXTS[language].map;
  const count = tiling.tiles.length;
  const corrected = tiling.correction.x !== 1 || tiling.correction.y !== 1;
  const list = [texts.printFirst, texts.measure, texts.printSheets(count)];
  if (count > 1) list.push(tiling.overlap > 0 ? texts.overlapped : texts.butted, texts.checkTape);
  const numbered = list.map((step, i) => `${i + 1}  ${step}`);
  if (!corrected) return numbered;
  const factor = (value: number): string => withDecimalSign(value.toFixed(4), language);
  return [...numbered, texts.corrected(factor(tiling.correction.x), factor(tiling.correction.y))];
}

/** A 10 cm square with a 2 in square in it: its left edge at x, its top at `top`, mm on the paper. */
function testSquares(x: number, top: number, correction: { x: number; y: number }, eachWay: string): PagePart {
  const items: DrawingItem[] = [];
  const square = (left: number, low: number, side: number, divisions: number): void => {
    items.push(drawLine("mark", rectangleContour(left, low, side, side)));
    for (let i = 1; i < divisions; i++) {
      const step = (side * i) / divisions;
      const tick = (2 * i) % divisions === 0 ? 3 : 1.8;
      items.push(drawLine("mark", segmentContour(left + step, low, left + step, low + tick)));
      items.push(drawLine("mark", segmentContour(left, low + step, left + tick, low + step)));
    }
  };
  const word = (text: string, at: number, y: number, size: number, bold: boolean): void => {
    items.push(drawText(text, at, y, size, { anchor: "middle", bold }));
  };
  square(0, -SQUARE, SQUARE, 10);
  word("10 cm", SQUARE / 2, -12, 6, true);
  word(eachWay, SQUARE / 2, -17, 3.4, false);
  square((SQUARE - INCHES) / 2, (INCHES - SQUARE) / 2 - INCHES - 4, INCHES, 4);
  word("2 in", SQUARE / 2, -SQUARE / 2 - 3, 6, true);
  word(eachWay, SQUARE / 2, -SQUARE / 2 - 8, 3.4, false);
  return { items, x, y: top, scaleX: correction.x, scaleY: correction.y, clip: null };
}

/** The whole lay small, with the sheets drawn and named on it. */
function miniature(sheet: LaySheet, tiling: Tiling, room: Box): PagePart[] {
  const windows = tiling.tiles.map((tile) => tile.window);
  const box = windows.reduce<Box>(joinedBox, sheet.drawing.box);
  const scale = Math.min(
    (room.maxX - room.minX) / (box.maxX - box.minX),
    (room.maxY - room.minY) / (box.maxY - box.minY),
  );
  if (!(scale > 0) || !Number.isFinite(scale)) return [];
  const x = room.minX - box.minX * scale;
  const y = room.maxY - box.maxY * scale;
  const lay = sheet.drawing.items.filter(
    (item) => item.kind === "area" || (item.kind === "line" && item.role === "cut"),
  );
  const grid: DrawingItem[] = [];
  tiling.tiles.forEach((tile) => {
    const { minX, minY, maxX, maxY } = tile.window;
    const size = Math.min((maxX - minX) / 4, (maxY - minY) / 3, 5 / scale);
    const halo = rectangleContour(
      (minX + maxX) / 2 - size * 0.95,
      (minY + maxY) / 2 - size * 0.6,
      size * 1.9,
      size * 1.25,
    );
    grid.push(drawLine("stitch", rectangleContour(minX, minY, maxX - minX, maxY - minY)));
    grid.push(drawArea("shade", [halo]));
    grid.push(
      drawText(tile.name, (minX + maxX) / 2, (minY + maxY) / 2 - size * 0.36, size, {
        anchor: "middle",
        bold: true,
      }),
    );
  });
  const on = { x, y, scaleX: scale, scaleY: scale, clip: null };
  return [
    { ...on, items: lay },
    { ...on, items: grid },
  ];
}

import { rectangleContour, segmentContour } from "../geometry/contourShapes.ts";
import type { DrawingItem } from "./drawing.ts";
import { drawArea, drawLine, drawText } from "./items.ts";
import type { LaySheet } from "./layDrawing.ts";
import { type Page, type PagePart, paperPart } from "./page.ts";
import { fitText, plainLine, wrapText } from "./textWidth.ts";
import type { SheetTitle } from "./tilePages.ts";
import type { Tiling } from "./tiling.ts";

/** Where the first page puts things, mm from the page's edges inward. */
const INSET = 15;

/** The first page: test squares, what to do, and where each sheet goes. Same paper as the sheets. */
export function mapPage(sheet: LaySheet, tiling: Tiling, title: SheetTitle): Page {
  const { width, height, correction } = tiling;
  const items: DrawingItem[] = [];
  const heading = [title.material, title.stock].filter((part) => part !== "").join(" · ");
  const room = width - 2 * INSET;
  const small = Math.min(width, height) < 180;
  let top = height - INSET - 6;
  items.push(drawText(fitText(plainLine(title.project), 7, room, true), INSET, top, 7, { bold: true }));
  top -= 6.5;
  items.push(drawText(fitText(plainLine(heading), 4.2, room), INSET, top, 4.2));
  top -= 8;
  const squares = testSquares(INSET, top, correction, small);
  const textX = INSET + (squares.width + 6) * correction.x;
  let y = top - 3;
  for (const step of steps(tiling)) {
    for (const line of wrapText(step, 3.2, width - INSET - textX)) {
      items.push(drawText(line, textX, y, 3.2));
      y -= 4.4;
    }
    y -= 1.2;
  }
  const mapTop = Math.min(top - squares.height * correction.y, y) - 6;
  const map = miniature(sheet, tiling, {
    minX: INSET,
    minY: INSET,
    maxX: width - INSET,
    maxY: mapTop,
  });
  return { name: "map", width, height, parts: [paperPart(items), squares.part, ...map] };
}

/** How to put the sheets together, one sentence a line. */
function steps(tiling: Tiling): string[] {
  const count = tiling.tiles.length;
  const corrected = tiling.correction.x !== 1 || tiling.correction.y !== 1;
  const list = [
    "1  Print this page first, at 100 % (actual size), never “fit to page”.",
    "2  Measure both squares each way. Off by more than half a millimetre? Stop: note the four figures and set the printer correction.",
    `3  Print the ${count === 1 ? "one sheet" : `${count} sheets`}.`,
  ];
  if (count > 1) {
    list.push(
      tiling.overlap > 0
        ? "4  Cut each sheet along its left and top frame where it has a neighbour there. Lay it over that neighbour up to the inner line, rings on rings; tape."
        : "4  Cut each sheet along its left and top frame where it has a neighbour there. Butt it against that neighbour, half rings to half rings; tape.",
      "5  Check with the tape along the lower edge: it counts the cloth's length from its cut end.",
    );
  }
  if (corrected) {
    list.push(
      `Drawn for a printer that is off: ×${tiling.correction.x.toFixed(4)} across, ×${tiling.correction.y.toFixed(4)} down.`,
    );
  }
  return list;
}

interface Squares {
  readonly part: PagePart;
  readonly width: number;
  readonly height: number;
}

/** A 5 cm and a 2 in square with their corner at the left and their top at `top`, mm on the paper. */
function testSquares(x: number, top: number, correction: { x: number; y: number }, small: boolean): Squares {
  const items: DrawingItem[] = [];
  const square = (at: number, side: number, word: string, divisions: number): void => {
    items.push(drawLine("mark", rectangleContour(at, -side, side, side)));
    for (let i = 1; i < divisions; i++) {
      const step = (side * i) / divisions;
      items.push(drawLine("mark", segmentContour(at + step, -side, at + step, 2 - side)));
      items.push(drawLine("mark", segmentContour(at, step - side, at + 2, step - side)));
    }
    items.push(drawText(word, at + side / 2, -side / 2, 4.2, { anchor: "middle", bold: true }));
    items.push(drawText("each way", at + side / 2, -side / 2 - 4.4, 2.8, { anchor: "middle" }));
  };
  square(0, 50, "5 cm", 5);
  if (!small) square(56, 50.8, "2 in", 4);
  const part = { items, x, y: top, scaleX: correction.x, scaleY: correction.y, clip: null };
  return { part, width: small ? 50 : 106.8, height: 50.8 };
}

/** The whole lay small, with the sheets drawn and named on it. */
function miniature(
  sheet: LaySheet,
  tiling: Tiling,
  room: { minX: number; minY: number; maxX: number; maxY: number },
): PagePart[] {
  const windows = tiling.tiles.map((tile) => tile.window);
  const box = windows.reduce(
    (all, w) => ({
      minX: Math.min(all.minX, w.minX),
      minY: Math.min(all.minY, w.minY),
      maxX: Math.max(all.maxX, w.maxX),
      maxY: Math.max(all.maxY, w.maxY),
    }),
    sheet.drawing.box,
  );
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

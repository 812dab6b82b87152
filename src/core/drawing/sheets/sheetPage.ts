import { segmentContour } from "../../geometry/contourShapes.ts";
import { PAPER_TEXTS } from "../../words/words.ts";
import type { GrainArrow } from "../lay/labelBlock.ts";
import type { LaySheet } from "../lay/layDrawing.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { isInked } from "../list/itemBox.ts";
import { drawLine, drawText } from "../list/items.ts";
import { type Page, type PagePart, paperPart } from "../list/page.ts";
import type { RoleStyle, RoleStyles } from "../list/roleStyles.ts";
import { fitText, plainLine } from "../list/textWidth.ts";
import { type SheetTitle, tilePages } from "./tilePages.ts";
import { tilePieces } from "./tiling.ts";

/** Room around the drawing on one long sheet, mm: what roll printers cannot reach, and a line of words. */
const EDGE = 10;
const WORDS = 12;
/** Shortest sheet: the words and the check tape side by side. */
const LEAST_LENGTH = 220;

/** How one long sheet is printed. */
export interface SheetOptions {
  /** Width of the copy shop's roll, mm; null for a sheet as wide as it must be. */
  readonly rollWidth: number | null;
  readonly correction: { readonly x: number; readonly y: number };
}

/**
 * The lay of one stock at true size on a copy shop's roll, the cloth's length along the paper's: one sheet where it
 * fits across the roll, else bands as long as the lay with joints like those of tiles.
 */
export function rollPages(sheet: LaySheet, title: SheetTitle, grain: GrainArrow, options: SheetOptions): Page[] {
  const { box } = sheet.drawing;
  const { correction, rollWidth } = options;
  const along = (box.maxX - box.minX) * correction.x + 2 * EDGE;
  const across = (box.maxY - box.minY) * correction.y + 2 * EDGE + WORDS;
  if (rollWidth === null || across <= rollWidth + 1e-6) {
    return [sheetPage(sheet, title, Math.max(along, LEAST_LENGTH), rollWidth ?? across, correction)];
  }
  const tiling = tilePieces(sheet.copies, {
    paper: { width: rollWidth, height: Math.max(along, LEAST_LENGTH) + 1 },
    margin: EDGE,
    overlap: 10,
    orientation: "landscape",
    correction: { x: correction.y, y: correction.x },
  });
  return tilePages(sheet, tiling, title, grain);
}

function sheetPage(
  sheet: LaySheet,
  title: SheetTitle,
  width: number,
  height: number,
  correction: SheetOptions["correction"],
): Page {
  const { tenCm } = PAPER_TEXTS[title.language].sheets;
  const words = [title.project, title.material, title.stock].filter((part) => part !== "").join(" · ");
  const top = EDGE + WORDS - 5;
  const items: DrawingItem[] = [
    drawText(fitText(plainLine(words), 4, width - 2 * EDGE - 112, true), EDGE, top - 4, 4, { bold: true }),
  ];
  return {
    name: "sheet",
    width,
    height,
    parts: [
      drawingPart(sheet.drawing, EDGE, EDGE + WORDS, correction),
      paperPart(items),
      checkTape(width, correction, tenCm),
    ],
  };
}

/** The lines of the lay alone, edge to edge with the cloth, for a projector; the cloth below has its own pattern. */
export function barePage({ drawing }: LaySheet): Page {
  const { box } = drawing;
  const lines = { box, items: drawing.items.filter(({ kind }) => kind !== "area") };
  return {
    name: "sheet",
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    parts: [drawingPart(lines, 0, 0, { x: 1, y: 1 })],
  };
}

function drawingPart(
  { box, items }: Drawing,
  left: number,
  low: number,
  correction: { readonly x: number; readonly y: number },
): PagePart {
  return {
    items: items.filter(isInked),
    x: left - box.minX * correction.x,
    y: low - box.minY * correction.y,
    scaleX: correction.x,
    scaleY: correction.y,
    clip: null,
  };
}

/** Ten centimetres to hold a ruler against, at the lower right. */
function checkTape(width: number, correction: SheetOptions["correction"], words: string): PagePart {
  const items: DrawingItem[] = [drawLine("mark", segmentContour(0, 0, 100, 0))];
  for (let cm = 0; cm <= 10; cm++) {
    const long = cm % 10 === 0 ? 4 : cm % 5 === 0 ? 3 : 2;
    items.push(drawLine("mark", segmentContour(cm * 10, 0, cm * 10, long)));
  }
  items.push(drawText(words, 50, 3.6, 2.6, { anchor: "middle" }));
  return {
    items,
    x: width - EDGE - 100 * correction.x,
    y: 6,
    scaleX: correction.x,
    scaleY: correction.y,
    clip: null,
  };
}

/** Lines for a projector: thick, bright on black. */
export function projectionStyles(styles: RoleStyles): RoleStyles {
  const bright: Partial<Record<keyof RoleStyles, string>> = {
    cut: "#ffffff",
    fold: "#ffc48a",
    stitch: "#8fe3f0",
    tape: "#e8d9b8",
    flaw: "#ff8a7d",
    label: "#ffffff",
  };
  const entries = Object.entries(styles).map(([role, style]: [string, RoleStyle]) => [
    role,
    {
      ...style,
      width: Math.max(1.2, style.width * 5),
      dash: style.dash.map((length) => length * 2.5),
      color: bright[role as keyof RoleStyles] ?? "#c9c9c9",
    },
  ]);
  return Object.fromEntries(entries) as RoleStyles;
}

import type { DrawingItem } from "../../core/drawing/list/drawing.ts";
import { drawText } from "../../core/drawing/list/items.ts";
import { type Page, paperPart } from "../../core/drawing/list/page.ts";
import { fitText, plainLine } from "../../core/drawing/list/textWidth.ts";
import { cutGuides, LABELS_3_BY_8, type LabelSheet } from "./labelPages.ts";
import { QUIET, scanCode } from "./scanCode.ts";

/** What one label says: the code that finds the piece, and lines about it. */
export interface ShelfLabel {
  readonly code: string;
  readonly lines: readonly string[];
}

/** A square of the code, mm: a telephone reads it from an arm's length (common practice, no source). */
const MODULE = 1;
const INSET = 3;
const CODE_SIZE = 5.2;
const LINE_SIZE = 2.9;
const LEADING = 1.35;

/** Labels for what is kept, each with its code to scan, at true size. */
export function shelfLabelPages(
  labels: readonly ShelfLabel[],
  paper: { readonly width: number; readonly height: number },
  sheet: LabelSheet = LABELS_3_BY_8,
): Page[] {
  const { columns, rows, marginX, marginY } = sheet;
  const width = (paper.width - 2 * marginX) / columns;
  const height = (paper.height - 2 * marginY) / rows;
  const pages: Page[] = [];
  for (let first = 0; first < labels.length; first += columns * rows) {
    const items: DrawingItem[] = cutGuides(paper, sheet, width, height);
    labels.slice(first, first + columns * rows).forEach((label, i) => {
      const left = marginX + (i % columns) * width;
      const top = paper.height - marginY - Math.floor(i / columns) * height;
      items.push(...labelArt(label, left, top, width, height));
    });
    pages.push({ name: String(pages.length + 1), ...paper, parts: [paperPart(items)] });
  }
  return pages;
}

function labelArt(
  { code, lines }: ShelfLabel,
  left: number,
  top: number,
  width: number,
  height: number,
): DrawingItem[] {
  const quiet = QUIET * MODULE;
  const { modules } = scanCode(code, 0, 0, MODULE);
  const side = modules * MODULE;
  const { art } = scanCode(code, left + quiet, top - height / 2 - side / 2, MODULE);
  const x = left + 2 * quiet + side;
  const room = left + width - INSET - x;
  let y = top - 2 * INSET - CODE_SIZE * 0.5;
  const items: DrawingItem[] = [art, drawText(code, x, y, CODE_SIZE, { bold: true })];
  for (const line of lines) {
    y -= LINE_SIZE * LEADING;
    if (y < top - height + 2) break;
    items.push(drawText(fitText(plainLine(line), LINE_SIZE, room), x, y - LINE_SIZE * 0.2, LINE_SIZE));
  }
  return items;
}

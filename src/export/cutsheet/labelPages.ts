import type { DrawingItem } from "../../core/drawing/list/drawing.ts";
import { drawLine, drawText } from "../../core/drawing/list/items.ts";
import { type Page, paperPart } from "../../core/drawing/list/page.ts";
import { fitText, plainLine, wrapText } from "../../core/drawing/list/textWidth.ts";
import { segmentContour } from "../../core/geometry/contourShapes.ts";
import type { SheetTexts } from "../../core/words/sheetTexts.ts";
import { SHEET_TEXTS } from "../../core/words/words.ts";
import { type CutRow, type CutSheet, labelSize } from "./cutSheet.ts";

/** A sheet of labels: columns and rows that fill the paper between its margins. */
export interface LabelSheet {
  readonly columns: number;
  readonly rows: number;
  readonly marginX: number;
  readonly marginY: number;
}

/** Three by eight, which on A4 are labels of 70 × 37 mm (common practice, no source). */
export const LABELS_3_BY_8: LabelSheet = { columns: 3, rows: 8, marginX: 0, marginY: 0 };

const INSET = 6.5;

/** One label a piece to cut, to pin or stick on it: name, which of how many, size, grain, material, project. */
export function labelPages(
  sheet: CutSheet,
  paper: { readonly width: number; readonly height: number },
  labels: LabelSheet = LABELS_3_BY_8,
): Page[] {
  const { columns, rows, marginX, marginY } = labels;
  const texts = SHEET_TEXTS[sheet.language];
  const width = (paper.width - 2 * marginX) / columns;
  const height = (paper.height - 2 * marginY) / rows;
  const all = sheet.groups.flatMap((group) =>
    group.rows.flatMap((row) => copies(row, texts).map((which) => ({ row, which, material: group.material }))),
  );
  const pages: Page[] = [];
  for (let first = 0; first < all.length; first += columns * rows) {
    const items: DrawingItem[] = cutGuides(paper, labels, width, height);
    all.slice(first, first + columns * rows).forEach((label, i) => {
      const left = marginX + (i % columns) * width;
      const top = paper.height - marginY - Math.floor(i / columns) * height;
      items.push(...labelItems(label, left, top, width, height, sheet));
    });
    pages.push({ name: String(pages.length + 1), ...paper, parts: [paperPart(items)] });
  }
  return pages;
}

/** "2 of 4" for each copy, mirror images counted by themselves. */
function copies(row: CutRow, texts: SheetTexts): string[] {
  const plain = Array.from({ length: row.count }, (_, i) => texts.copy(i + 1, row.count));
  const mirrored = Array.from({ length: row.mirroredCount }, (_, i) =>
    texts.mirroredCopy(i + 1, row.mirroredCount),
  );
  return [...plain, ...mirrored];
}

interface Label {
  readonly row: CutRow;
  readonly which: string;
  readonly material: string;
}

function labelItems(
  { row, which, material }: Label,
  left: number,
  top: number,
  width: number,
  height: number,
  sheet: CutSheet,
): DrawingItem[] {
  const texts = SHEET_TEXTS[sheet.language];
  const room = width - 2 * INSET;
  const x = left + INSET;
  const size = Math.min(4.4, height / 8);
  const names = wrapText(plainLine(row.name), size, room, true).slice(0, 2);
  const small = size * 0.66;
  let y = top - INSET - size * 0.8;
  const items: DrawingItem[] = [];
  for (const line of names) {
    items.push(drawText(fitText(line, size, room, true), x, y, size, { bold: true }));
    y -= size * 1.25;
  }
  y += size * 0.25;
  const lines = [
    `${texts.labelNumber(row.number)} · ${which}`,
    `${labelSize(row.along, sheet)}  ×`,
    labelSize(row.across, sheet),
    `↔ ${texts.grains[row.grain]} · ${plainLine(material)}`,
    plainLine(sheet.project),
  ];
  for (const line of lines) {
    if (y - small < top - height + 3) break;
    items.push(drawText(fitText(line, small, room), x, y - small * 0.6, small));
    y -= small * 1.4;
  }
  return items;
}

/** Fine lines between the labels for plain paper. */
export function cutGuides(
  paper: { readonly width: number; readonly height: number },
  { columns, rows, marginX, marginY }: LabelSheet,
  width: number,
  height: number,
): DrawingItem[] {
  const items: DrawingItem[] = [];
  for (let column = 1; column < columns; column++) {
    const x = marginX + column * width;
    items.push(drawLine("sheet", segmentContour(x, marginY, x, paper.height - marginY)));
  }
  for (let row = 1; row < rows; row++) {
    const y = marginY + row * height;
    items.push(drawLine("sheet", segmentContour(marginX, y, paper.width - marginX, y)));
  }
  return items;
}

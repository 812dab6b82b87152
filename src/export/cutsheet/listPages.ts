import type { DrawingItem } from "../../core/drawing/list/drawing.ts";
import { drawLine, drawText } from "../../core/drawing/list/items.ts";
import { type Page, paperPart } from "../../core/drawing/list/page.ts";
import { fitText, plainLine } from "../../core/drawing/list/textWidth.ts";
import { rectangleContour } from "../../core/geometry/contourShapes.ts";

/** A list to take along: groups of lines, each with what, how much and the money. */
export interface PrintedList {
  readonly title: string;
  readonly groups: readonly {
    readonly heading: string;
    readonly rows: readonly (readonly [what: string, amount: string, money: string])[];
  }[];
  /** Below everything. */
  readonly totals: readonly string[];
}

const MARGIN = 18;
const SIZE = 4;
const LINE = 7;
/** Widths of the columns for how much and for the money, mm. */
const [AMOUNT, MONEY] = [34, 30];

/** The list on sheets of paper, a box to tick beside each line. */
export function listPages(list: PrintedList, paper: { readonly width: number; readonly height: number }): Page[] {
  const pages: Page[] = [];
  let items: DrawingItem[] = [];
  let y = paper.height - MARGIN;
  const room = paper.width - 2 * MARGIN;
  const turn = (): void => {
    pages.push({ name: String(pages.length + 1), ...paper, parts: [paperPart(items)] });
    items = [];
    y = paper.height - MARGIN;
  };
  const down = (mm: number, keep = 0): void => {
    if (y - mm - keep < MARGIN) turn();
    else y -= mm;
  };
  const write = (
    text: string,
    x: number,
    width: number,
    size: number,
    bold = false,
    anchor: "start" | "end" = "start",
  ): void => {
    items.push(drawText(fitText(plainLine(text), size, width, bold), x, y, size, { bold, anchor }));
  };
  y -= SIZE * 1.5;
  write(list.title, MARGIN, room, SIZE * 1.5, true);
  for (const { heading, rows } of list.groups) {
    // A heading stays with its first line.
    down(LINE * 1.8, LINE);
    write(heading, MARGIN, room, SIZE, true);
    for (const [what, amount, money] of rows) {
      down(LINE);
      items.push(drawLine("sheet", rectangleContour(MARGIN, y - 0.5, SIZE * 0.9, SIZE * 0.9)));
      const x = MARGIN + SIZE * 1.8;
      write(what, x, room - SIZE * 1.8 - AMOUNT - MONEY - 2, SIZE);
      write(amount, MARGIN + room - MONEY - AMOUNT, AMOUNT, SIZE);
      write(money, MARGIN + room, MONEY, SIZE, false, "end");
    }
  }
  for (const total of list.totals) {
    down(LINE * 1.8);
    write(total, MARGIN, room, SIZE, true);
  }
  turn();
  return pages;
}

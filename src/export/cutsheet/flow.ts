import type { DrawingItem } from "../../core/drawing/list/drawing.ts";
import { drawLine, drawText } from "../../core/drawing/list/items.ts";
import { type Page, type PagePart, paperPart } from "../../core/drawing/list/page.ts";
import { fitText, plainLine } from "../../core/drawing/list/textWidth.ts";
import { segmentContour } from "../../core/geometry/contourShapes.ts";

/** Something as high as it says, put on a page with its top at `top`. */
export interface Block {
  /** mm. */
  readonly height: number;
  /** Heads must not stand alone at the foot of a page. */
  readonly keepWithNext: boolean;
  draw(left: number, top: number): { items: DrawingItem[]; parts?: PagePart[] };
}

/** Paper of the flow. Lengths in mm. */
export interface FlowPaper {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

/** Left free round a cut sheet, mm. */
export const SHEET_MARGIN = 15;

/** Width between the margins of a cut sheet on a paper, mm. */
export const roomOn = ({ width }: { readonly width: number }): number => width - 2 * SHEET_MARGIN;

/** Highest picture worth a third of a page, mm; only odd ones come near it. */
export const PICTURE_HEIGHT = 90;

/** Blocks after a head that stay with it: one line alone under it, the rest overleaf, is soon overlooked. */
const KEPT = 2;

/** Height of what must stand on the page of block `i`, mm; never past the next head. */
function keptWith(blocks: readonly Block[], i: number): number {
  if (!blocks[i]!.keepWithNext) return 0;
  let height = 0;
  let kept = 0;
  for (let j = i + 1; j < blocks.length && kept < KEPT; j++) {
    const { keepWithNext, height: own } = blocks[j]!;
    if (keepWithNext && kept > 0) break;
    height += own;
    if (!keepWithNext) kept++;
  }
  return height;
}

/** Blocks one below the other on as many pages as they need, with a running foot. O(blocks). */
export function flowPages(
  blocks: readonly Block[],
  paper: FlowPaper,
  foot: string,
  pageWords: (page: number, of: number) => string,
): Page[] {
  const { width, height, margin } = paper;
  const floor = margin + 8;
  const pages: { items: DrawingItem[]; parts: PagePart[] }[] = [];
  let page: { items: DrawingItem[]; parts: PagePart[] } | undefined;
  let top = 0;
  blocks.forEach((block, i) => {
    const next = keptWith(blocks, i);
    if (!page || (top - block.height - next < floor && top < height - margin)) {
      page = { items: [], parts: [] };
      pages.push(page);
      top = height - margin;
    }
    const { items, parts = [] } = block.draw(margin, top);
    page.items.push(...items);
    page.parts.push(...parts);
    top -= block.height;
  });
  return pages.map(({ items, parts }, i) => {
    const footer = [
      drawLine("sheet", segmentContour(margin, margin + 4.5, width - margin, margin + 4.5)),
      drawText(fitText(plainLine(foot), 2.6, width - 2 * margin - 25), margin, margin, 2.6, { role: "sheet" }),
      drawText(pageWords(i + 1, pages.length), width - margin, margin, 2.6, { role: "sheet", anchor: "end" }),
    ];
    return { name: String(i + 1), width, height, parts: [paperPart([...items, ...footer]), ...parts] };
  });
}

import { rectangleContour, segmentContour } from "../../geometry/contourShapes.ts";
import type { RulerCuts } from "../../lay/alternatives/layFigures.ts";
import { type CutPart, type CutSequence, type CutStep, tableAfter } from "../../lay/boxes/cuts/cutSequence.ts";
import { cautionText } from "../../materials/caution.ts";
import { isCutBySize } from "../../materials/cutPiece.ts";
import type { Language } from "../../units/language.ts";
import type { RulerTexts } from "../../words/rulerTexts.ts";
import { CAUTION_TABLES, RULER_TEXTS } from "../../words/words.ts";
import type { LaySheet } from "../lay/layDrawing.ts";
import type { DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { type Page, type PagePart, paperPart } from "../list/page.ts";
import { fitText, plainLine, textWidth, wrapText } from "../list/textWidth.ts";
import type { SheetTitle } from "./tilePages.ts";

/** Cuts in order, and what they leave. */
export interface RulerPlan {
  readonly sequence: CutSequence;
  /** Names of the pieces, by the number the sequence knows them by. */
  readonly names: readonly string[];
  /** Edge that is cut off first, mm. */
  readonly margin: number;
}

/** The ruler cuts of one stock with the names of its pieces as its sheet has them; a curved one's box is named so. */
export function rulerPlan(
  { sequence, placements, margin }: RulerCuts,
  sheet: LaySheet,
  texts: RulerTexts = RULER_TEXTS.en,
): RulerPlan {
  const copies = new Map(sheet.copies.map((copy) => [`${copy.copy} ${copy.pieceId}`, copy]));
  const names = placements.map(({ pieceId, copy }) => {
    const found = copies.get(`${copy} ${pieceId}`);
    if (!found) return pieceId;
    return isCutBySize(found.outline) ? found.name : texts.boxOf(found.name);
  });
  return { sequence, names, margin };
}

/** What is written of a length. */
export type WriteLength = (mm: number) => string;

const MARGIN = 12;
const HEAD = 37;
const FOOT = 8;
const GUTTER = 8;

/** A page for every few cuts: the cloth as it lies, where the ruler sits, what it is set to and what falls off. */
export function rulerPages(
  plan: RulerPlan,
  paper: { readonly width: number; readonly height: number },
  title: SheetTitle,
  write: WriteLength,
): Page[] {
  const texts = RULER_TEXTS[title.language];
  const caution = cautionText({ code: "rotary-cutter" }, CAUTION_TABLES[title.language]);
  const care = `${texts.measure} ${texts.curved} ${caution}`;
  const columns = 2;
  const rows = 4;
  const width = (paper.width - 2 * MARGIN - GUTTER) / columns;
  const height = (paper.height - 2 * MARGIN - HEAD - FOOT) / rows;
  const { steps, cuts, settings } = plan.sequence;
  const perPage = columns * rows;
  const count = Math.ceil(steps.length / perPage);
  return Array.from({ length: count }, (_, page) => {
    const items: DrawingItem[] = pageHead(
      title,
      `${texts.byRuler}. ${texts.counts(cuts, settings)}.`,
      care,
      texts.page(page + 1, count),
      paper,
    );
    const parts: PagePart[] = [];
    steps.slice(page * perPage, (page + 1) * perPage).forEach((step, i) => {
      const left = MARGIN + (i % columns) * (width + GUTTER);
      const top = paper.height - MARGIN - HEAD - Math.floor(i / columns) * height;
      const words = stepWords(step, plan, write, texts).flatMap((sentence, k) => {
        const [size, bold] = k === 0 ? [3.6, true] : [3, false];
        return wrapText(sentence, size, width, bold).map((line) => ({ line, size, bold }));
      });
      items.push(
        ...words.map(({ line, size, bold }, k) => drawText(line, left, top - 4 - k * 4.2, size, { bold })),
      );
      parts.push(
        picture(step, plan, {
          left,
          top: top - 4 - words.length * 4.2,
          width,
          height: height - 10 - words.length * 4.2,
        }),
      );
    });
    return { name: String(page + 1), ...paper, parts: [paperPart(items), ...parts] };
  });
}

/** One cut to show on a screen: its number, what to do and what comes off, and the table before it. */
export interface RulerCard {
  readonly number: number;
  readonly words: readonly string[];
  readonly picture: Page;
}

/** Every cut as a card `width` by `height` mm large. */
export function rulerCards(
  plan: RulerPlan,
  size: { readonly width: number; readonly height: number },
  write: WriteLength,
  language: Language,
): RulerCard[] {
  return plan.sequence.steps.map((step) => {
    const [order, ...rest] = stepWords(step, plan, write, RULER_TEXTS[language]);
    const inner = { left: 3, top: size.height - 3, width: size.width - 6, height: size.height - 6 };
    const words = [order!.replace(/^\d+\s+/u, ""), ...rest];
    const page = { name: String(step.number), ...size, parts: [picture(step, plan, inner)] };
    return { number: step.number, words, picture: page };
  });
}

function pageHead(
  title: SheetTitle,
  counts: string,
  care: string,
  page: string,
  paper: { readonly width: number; readonly height: number },
): DrawingItem[] {
  const room = paper.width - 2 * MARGIN;
  const top = paper.height - MARGIN;
  return [
    drawText(fitText(plainLine(`${title.project}: ${title.material}`), 6, room, true), MARGIN, top - 6, 6, {
      bold: true,
    }),
    drawText(fitText(plainLine(counts), 3.2, room), MARGIN, top - 12, 3.2),
    ...wrapText(care, 3.2, room).map((line, i) => drawText(line, MARGIN, top - 17 - i * 4.2, 3.2)),
    drawText(page, paper.width - MARGIN, MARGIN, 2.6, { role: "sheet", anchor: "end" }),
  ];
}

/** What to do, and what comes off. */
function stepWords(step: CutStep, plan: RulerPlan, write: WriteLength, texts: RulerTexts): string[] {
  const { number, kind, setting, sameSetting, off, cloth } = step;
  if (kind === "straighten") return [`${number}  ${texts.straighten(plan.margin > 0 ? write(plan.margin) : "")}`];
  const set = sameSetting ? texts.rulerStands : texts.setRuler;
  const cut = kind === "crosscut" ? texts.crosscut : texts.rip;
  const from = cloth.kind === "cloth" && cloth.name !== "" ? cloth.name : texts.wholeCloth;
  return [
    `${number}  ${cut(from, write(setting))}`,
    `${set}${off ? `; ${texts.comesOff(partWords(off, plan, texts))}` : ""}`,
  ];
}

function partWords(part: CutPart, plan: RulerPlan, texts: RulerTexts): string {
  if (part.kind === "piece") return plan.names[part.piece]!;
  return part.kind === "offcut" ? texts.offcut : texts.cutFurther(part.name);
}

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The table before the cut: what is under the ruler drawn strong, the rest pale, the ruler along the cut. */
function picture(step: CutStep, plan: RulerPlan, frame: Frame): PagePart {
  const whole = plan.sequence.steps[0]!.cloth.box;
  const scale = Math.min(frame.width / whole.dx, frame.height / whole.dy);
  const items: DrawingItem[] = [];
  for (const part of tableAfter(plan.sequence, step.number - 1))
    items.push(...partItems(part, plan, scale, isUnder(part, step)));
  items.push(...rulerItems(step, scale));
  return {
    items,
    x: frame.left - whole.x * scale,
    y: frame.top - (whole.y + whole.dy) * scale,
    scaleX: scale,
    scaleY: scale,
    clip: null,
  };
}

function isUnder(part: CutPart, { cloth }: CutStep): boolean {
  return (
    part.box.x === cloth.box.x &&
    part.box.y === cloth.box.y &&
    part.box.dx === cloth.box.dx &&
    part.box.dy === cloth.box.dy
  );
}

function partItems(part: CutPart, plan: RulerPlan, scale: number, under: boolean): DrawingItem[] {
  const { x, y, dx, dy } = part.box;
  const outline = rectangleContour(x, y, dx, dy);
  const tone = part.kind === "offcut" ? "shade" : under ? "face" : part.kind === "piece" ? "piece" : "cloth";
  const items: DrawingItem[] = [drawArea(tone, [outline]), drawLine(under ? "cut" : "sheet", outline)];
  const text = part.kind === "piece" ? plan.names[part.piece]! : part.kind === "cloth" ? part.name : "";
  const size = Math.min(2.6 / scale, dy * 0.7, (dx / Math.max(1e-6, textWidth(text, 1))) * 0.9);
  if (text !== "" && size * scale >= 1) {
    items.push(drawText(text, x + dx / 2, y + dy / 2 - size * 0.36, size, { anchor: "middle" }));
  }
  return items;
}

/** A ruler on the kept side of the cut: a band with its edge on the line. */
function rulerItems(step: CutStep, scale: number): DrawingItem[] {
  const { x, y, dx, dy } = step.cloth.box;
  const over = 2 / scale;
  const wide = 3 / scale;
  if (step.kind === "rip") {
    return [
      drawArea("facing", [rectangleContour(x - over, step.at - wide, dx + 2 * over, wide)]),
      drawLine("stitch", segmentContour(x - over, step.at, x + dx + over, step.at)),
    ];
  }
  return [
    drawArea("facing", [rectangleContour(step.at - wide, y - over, wide, dy + 2 * over)]),
    drawLine("stitch", segmentContour(step.at, y - over, step.at, y + dy + over)),
  ];
}

import type { DrawingItem } from "../../core/drawing/list/drawing.ts";
import { drawLine, drawText } from "../../core/drawing/list/items.ts";
import type { Page } from "../../core/drawing/list/page.ts";
import { fitText, plainLine, textWidth, wrapText } from "../../core/drawing/list/textWidth.ts";
import { rectangleContour, segmentContour } from "../../core/geometry/contourShapes.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import { SHEET_TEXTS } from "../../core/words/words.ts";
import { type Amount, type CutGroup, type CutRow, type CutSheet, type Picture, sheetInches } from "./cutSheet.ts";
import { type Block, type FlowPaper, flowPages, PICTURE_HEIGHT, roomOn, SHEET_MARGIN } from "./flow.ts";

const TEXT = 3.2;
const SMALL = 2.8;
const LINE = 1.35;
/** Longest line of words, mm: as on A4. */
const MEASURE = 180;

/** The cut sheet as pages: pieces with a box to tick for each, purchase, work, pictures and cautions. */
export function cutSheetPages(sheet: CutSheet, paper: { readonly width: number; readonly height: number }): Page[] {
  const texts = SHEET_TEXTS[sheet.language];
  const width = roomOn(paper);
  const flow: FlowPaper = { ...paper, margin: SHEET_MARGIN };
  const blocks: Block[] = [
    textBlock(plainLine(sheet.project), 7, width, { bold: true }),
    textBlock(`${texts.title}. ${texts.forBags(sheet.bags)}`, TEXT, width, {}),
  ];
  for (const group of sheet.groups) blocks.push(...groupBlocks(group, width, sheet));
  blocks.push(
    ...amountBlocks(texts.toBuy, sheet.purchase, width),
    ...amountBlocks(texts.alsoNeeded, sheet.consumables, width),
  );
  for (const { title, lead, steps } of sheet.work) {
    if (steps.length === 0) continue;
    blocks.push(heading(plainLine(title), width));
    for (const line of lead) blocks.push(textBlock(plainLine(line), TEXT, width, {}));
    steps.forEach((step, i) => {
      blocks.push(textBlock(`${i + 1}.  ${plainLine(step)}`, TEXT, width, { hang: 4.5 }));
    });
  }
  if (sheet.pictures.length > 0) {
    blocks.push(heading(texts.pictures, width));
    for (const picture of sheet.pictures) blocks.push(pictureBlock(picture, width));
  }
  if (sheet.cautions.length > 0) {
    blocks.push(heading(texts.takeCare, width));
    for (const caution of sheet.cautions)
      blocks.push(textBlock(`!  ${plainLine(caution)}`, TEXT, width, { hang: 4.5 }));
  }
  return flowPages(blocks, flow, `${sheet.project}: ${texts.title}`, texts.page);
}

interface TextSettings {
  readonly bold?: boolean;
  /** Indent of the lines after the first, mm. */
  readonly hang?: number;
}

function textBlock(text: string, size: number, width: number, { bold = false, hang = 0 }: TextSettings): Block {
  const lines = wrapText(text, size, Math.min(width, MEASURE) - hang, bold);
  return {
    height: lines.length * size * LINE + size * 0.35,
    keepWithNext: false,
    draw: (left, top) => ({
      items: lines.map((line, i) =>
        drawText(line, left + (i === 0 ? 0 : hang), top - size * (1 + i * LINE), size, { bold }),
      ),
    }),
  };
}

function space(height: number): Block {
  return { height, keepWithNext: true, draw: () => ({ items: [] }) };
}

function heading(text: string, width: number): Block {
  const size = 4.6;
  return {
    height: 13,
    keepWithNext: true,
    draw: (left, top) => ({
      items: [
        drawText(fitText(text, size, width, true), left, top - 9, size, { bold: true }),
        drawLine("label", segmentContour(left, top - 11, left + width, top - 11)),
      ],
    }),
  };
}

/** Share of the width at which each column starts, with inches and without. */
const COLUMNS = { number: 0, count: 0.045, name: 0.115 };
const SIZE_COLUMNS = {
  both: { metric: 0.43, inches: 0.595, grain: 0.855 },
  metric: { metric: 0.55, inches: 0.8, grain: 0.8 },
};

function groupBlocks(group: CutGroup, width: number, sheet: CutSheet): Block[] {
  const blocks = [heading(plainLine(group.material), width), columnHeads(width, sheet)];
  for (const row of group.rows) blocks.push(rowBlock(row, width, sheet));
  if (group.lay.length > 0) blocks.push(space(2));
  for (const line of group.lay) blocks.push(textBlock(plainLine(line), TEXT, width, {}));
  return blocks;
}

function columnHeads(width: number, { language, inInches }: CutSheet): Block {
  const { columns } = SHEET_TEXTS[language];
  const sizes = SIZE_COLUMNS[inInches ? "both" : "metric"];
  const words: [number, string][] = [
    [COLUMNS.count, columns.cut],
    [COLUMNS.name, columns.piece],
    [sizes.metric, columns.size],
    ...(inInches ? [[sizes.inches, columns.inches] as [number, string]] : []),
    [sizes.grain, columns.grain],
  ];
  return {
    height: 5,
    keepWithNext: true,
    draw: (left, top) => ({
      items: words.map(([share, word], i) => {
        const room = ((words[i + 1]?.[0] ?? 1) - share) * width - 1;
        const size = Math.min(SMALL, (SMALL * room) / textWidth(word, SMALL));
        return drawText(word, left + share * width, top - 3.2, size, { role: "sheet" });
      }),
    }),
  };
}

/** Boxes to tick, one a copy, as long as they fit in two lines. */
const MOST_TICKS = 40;
const TICK = 3;

function rowBlock(row: CutRow, width: number, { language, inInches }: CutSheet): Block {
  const texts = SHEET_TEXTS[language];
  const sizes = SIZE_COLUMNS[inInches ? "both" : "metric"];
  const total = row.count + row.mirroredCount;
  const nameRoom = (sizes.metric - COLUMNS.name) * width - 2;
  const names = wrapText(plainLine(row.name), TEXT, nameRoom, true).slice(0, 3);
  const mirrored = row.mirroredCount > 0 ? [texts.asDrawn(row.count, row.mirroredCount)] : [];
  const notes = [...mirrored, ...row.notes].flatMap((note) =>
    wrapText(plainLine(note), SMALL, (1 - COLUMNS.name) * width),
  );
  const ticks = total <= MOST_TICKS ? total : 0;
  const perLine = Math.floor(((1 - COLUMNS.name) * width) / (TICK + 1.6));
  const tickLines = Math.ceil(ticks / perLine);
  const nameHeight = names.length * TEXT * LINE;
  const noteHeight = notes.length * SMALL * LINE;
  const height = 1.6 + nameHeight + noteHeight + tickLines * (TICK + 1.4) + 1.6;
  const draw = (left: number, top: number): { items: DrawingItem[] } => {
    const x = (share: number): number => left + share * width;
    const base = top - 1.2 - TEXT;
    // A size is never cut off: what is too long for its column is written smaller.
    const cell = (share: number, text: string, end: number, bold = false): DrawingItem => {
      const room = (end - share) * width - 1;
      const size = Math.min(TEXT, (TEXT * room) / textWidth(text, TEXT, bold));
      return drawText(text, x(share), base, size, { bold });
    };
    const items: DrawingItem[] = [
      cell(COLUMNS.number, String(row.number), COLUMNS.count),
      cell(COLUMNS.count, String(total), COLUMNS.name, true),
      ...names.map((line, i) => drawText(line, x(COLUMNS.name), base - i * TEXT * LINE, TEXT, { bold: true })),
      cell(
        sizes.metric,
        sizeWords(row, (mm) => formatLength(mm, "mm", language), " mm"),
        sizes.inches,
      ),
      ...(inInches ? [cell(sizes.inches, sizeWords(row, sheetInches, " in"), sizes.grain)] : []),
      cell(sizes.grain, texts.grains[row.grain], 1),
    ];
    let y = top - 1.6 - nameHeight;
    notes.forEach((note, i) => {
      items.push(drawText(note, x(COLUMNS.name), y - SMALL * (1 + i * LINE) + 0.6, SMALL));
    });
    y -= noteHeight;
    for (let i = 0; i < ticks; i++) {
      const column = i % perLine;
      const line = Math.floor(i / perLine);
      const tickX = x(COLUMNS.name) + column * (TICK + 1.6);
      items.push(drawLine("mark", rectangleContour(tickX, y - (line + 1) * (TICK + 1.4), TICK, TICK)));
    }
    items.push(drawLine("sheet", segmentContour(left, top - height, left + width, top - height)));
    return { items };
  };
  return { height, keepWithNext: false, draw };
}

function sizeWords(row: CutRow, write: (mm: number) => string, unit: string): string {
  return `${write(row.along).replace(unit, "")} × ${write(row.across)}`;
}

function amountBlocks(title: string, list: readonly Amount[], width: number): Block[] {
  if (list.length === 0) return [];
  const rows = list.map(({ what, amount }): Block => {
    const lines = wrapText(plainLine(amount), TEXT, width * 0.55);
    const names = wrapText(plainLine(what), TEXT, width * 0.42);
    return {
      height: Math.max(1, names.length, lines.length) * TEXT * LINE + 1,
      keepWithNext: false,
      draw: (left, top) => ({
        items: [
          ...names.map((line, i) => drawText(line, left, top - TEXT * (1 + i * LINE), TEXT)),
          ...lines.map((line, i) =>
            drawText(line, left + width * 0.45, top - TEXT * (1 + i * LINE), TEXT, { bold: true }),
          ),
        ],
      }),
    };
  });
  return [heading(title, width), ...rows];
}

/** What a picture's own margin saves below it, and the room its title takes above, mm. */
const PICTURE_MARGIN = 2;

/** A picture as large as it is drawn, since it names its scale; smaller only where the paper is too narrow. */
function pictureBlock({ title, drawing }: Picture, width: number): Block {
  const { box, items } = drawing;
  const w = Math.max(box.maxX - box.minX, 1e-3);
  const h = Math.max(box.maxY - box.minY, 1e-3);
  const scale = Math.min(width / w, PICTURE_HEIGHT / h, 1);
  const height = h * scale - PICTURE_MARGIN;
  return {
    height,
    keepWithNext: false,
    draw: (left, top) => ({
      items: [drawText(fitText(plainLine(title), TEXT, width, true), left, top - TEXT - 1, TEXT, { bold: true })],
      parts: [
        {
          items,
          x: left - box.minX * scale,
          y: top - PICTURE_MARGIN - box.maxY * scale,
          scaleX: scale,
          scaleY: scale,
          clip: null,
        },
      ],
    }),
  };
}

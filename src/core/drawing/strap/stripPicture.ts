import { ringBox } from "../../geometry/box.ts";
import { straightContour } from "../../geometry/contourShapes.ts";
import type { CutPiece, PieceLine } from "../../materials/cutPiece.ts";
import type { DrawnStrap, LengthItem } from "../../straps/build/strapResult.ts";
import type { StrapWords } from "../../words/strapWords.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { textWidth, wrapText } from "../list/textWidth.ts";
import { lengthLabel, levelDimension } from "./dimensionLine.ts";

/** Height of letters, and the least of it on narrow paper, mm. */
const TEXT = 3;
const LEAST_TEXT = 1.8;
/** Heights of the piece's name and of how it is drawn, mm. */
const HEAD = 4;
const SMALL = 2.8;
const MARGIN = 6;
/** How much of the strip is drawn at most and at least, mm on the page; the rest is broken out. */
const SHOWN = { most: 110, least: 30 };
/** Height of the strip on the page at most, mm: four pictures go on a cut sheet of A4. */
const TALL = 28;
const BREAK = 2;
/** Room for the upright dimension line, and for the lines that lead to labels, mm. */
const DIMENSION = 7;
const LABEL = 11;
/** Labels of neighbouring lines are spread to stay this far apart, in text heights. */
const SPREAD = 1.35;

/** A line along the strip by its height. */
interface LevelLine {
  readonly y: number;
  readonly line: PieceLine;
}

function levelLines(piece: CutPiece): LevelLine[] {
  return piece.lines
    .filter((line) => line.contour.vertices.length === 6 && line.contour.vertices[1] === line.contour.vertices[4])
    .map((line) => ({ y: line.contour.vertices[1]!, line }))
    .sort((a, b) => a.y - b.y);
}

/** Heights of labels: as near to their lines as they can be without running into each other. */
function spreadHeights(wanted: readonly number[], step: number): number[] {
  const out: number[] = [];
  for (const y of wanted) out.push(Math.max(y, (out.at(-1) ?? Number.NEGATIVE_INFINITY) + step));
  const over =
    out.length === 0 ? 0 : Math.max(0, out.at(-1)! - Math.max(wanted.at(-1)!, out[0]! + (out.length - 1) * step));
  return out.map((y) => y - over / 2);
}

/** What each end takes of the strip, the first end first. */
function endMarks({ items }: DrawnStrap["lengths"]): readonly LengthItem[] {
  return items.filter(({ code }) => code.startsWith("end-") && code !== "end-raw");
}

/** Strip with its far part broken out: a long thing drawn short. */
function brokenOutline(x0: number, x1: number, y0: number, y1: number): number[] {
  const steps = 6;
  const points = [x0, y0, x1, y0];
  for (let i = 1; i < steps; i++) points.push(x1 + (i % 2 === 1 ? BREAK : -BREAK), y0 + ((y1 - y0) * i) / steps);
  return [...points, x1, y1, x0, y1];
}

/**
 * A strip laid flat, wrong side up, with its fold, tape, stitch and trim lines and how far each lies from the lower
 * edge. Its width is to a scale that is named; its length is broken off, so that it takes `room` mm at
 * most where its words leave that much. Drawing mm.
 */
export function stripPicture(
  piece: CutPiece,
  { inches, lengths }: Pick<DrawnStrap, "inches" | "lengths">,
  { language, lineAt, lengthItems, picture }: StrapWords,
  room: number,
): Drawing {
  const box = ringBox(piece.outline.outer);
  const width = box.maxY;
  const scale = Math.min(1, TALL / width);
  const lines = levelLines(piece);
  const cut = picture.cutWidth(lengthLabel(width, inches, language));
  const labels = lines.map(({ y, line }) => lineAt(line.note ?? line.role, lengthLabel(y, inches, language)));
  // Widths of the words at a height of 1 mm.
  const [before, after] = [textWidth(cut, 1), Math.max(0, ...labels.map((label) => textWidth(label, 1)))];
  const spare = room - 2 * MARGIN - DIMENSION - LABEL - SHOWN.least;
  const text = Math.max(LEAST_TEXT, Math.min(TEXT, spare / (before + after)));
  const x0 = MARGIN + before * text + DIMENSION;
  const x1 = x0 + Math.min(SHOWN.most, Math.max(SHOWN.least, room - x0 - LABEL - after * text - MARGIN));
  const y0 = MARGIN + 12;
  const y1 = y0 + width * scale;
  const outline = straightContour(brokenOutline(x0, x1, y0, y1), true);
  const items: DrawingItem[] = [drawArea("back", [outline]), drawLine("cut", outline)];
  const heights = spreadHeights(
    lines.map(({ y }) => y0 + y * scale),
    text * SPREAD,
  );
  lines.forEach(({ y, line }, i) => {
    const at = y0 + y * scale;
    items.push(drawLine(line.role, straightContour([x0, at, x1 - BREAK, at])));
    items.push(
      drawLine("label", straightContour([x1 + BREAK + 0.5, at, x1 + 8, heights[i]!, x1 + 10, heights[i]!])),
    );
    items.push(drawText(labels[i]!, x1 + LABEL, heights[i]! - text * 0.35, text));
  });
  const ends = piece.joined ? [] : endMarks(lengths);
  const [first] = ends;
  if (first !== undefined) {
    // As far in as the width is drawn to scale, but always on what is shown.
    const at = x0 + Math.min(first.mm * scale, (x1 - x0) * 0.6);
    items.push(drawLine("fold", straightContour([at, y0, at, y1])));
  }
  const long = picture.cutLength(lengthLabel(box.maxX, inches, language));
  const dimension = levelDimension(x0, x1, y0 - 1, MARGIN + 4, long, text);
  items.push(
    ...dimension,
    drawLine("label", straightContour([x0 - 3, y0, x0 - 3, y1])),
    drawLine("label", straightContour([x0 - 4, y0, x0 - 1, y0])),
    drawLine("label", straightContour([x0 - 4, y1, x0 - 1, y1])),
    drawText(cut, MARGIN, (y0 + y1) / 2 - text * 0.35, text),
  );
  const inner = Math.max(room, x1 + LABEL + after * text + MARGIN) - 2 * MARGIN;
  const marked = ends.map(({ code, mm }) => `${lengthLabel(mm, inches, language)} ${lengthItems[code]}`);
  const said = [
    picture.flat(scale === 1 ? null : Math.round(scale * 100)),
    ...(marked.length === 0 ? [] : [picture.endMarks([...new Set(marked)])]),
  ];
  const about = said.flatMap((line) => wrapText(line, SMALL, inner));
  const heads = wrapText(piece.name, HEAD, inner, true);
  let y = Math.max(y1, (heights.at(-1) ?? y1) + text) + 4.5;
  for (const line of about.toReversed()) {
    items.push(drawText(line, MARGIN, y, SMALL));
    y += 4.5;
  }
  for (const line of heads.toReversed()) {
    items.push(drawText(line, MARGIN, y, HEAD, { bold: true }));
    y += 5;
  }
  const wide = [
    x1 + LABEL + after * text,
    // On a short strip the words of its length run on beyond it.
    ...dimension.map((item) =>
      item.kind === "text" && item.anchor === "start" ? item.x + textWidth(long, text) : 0,
    ),
    ...about.map((line) => MARGIN + textWidth(line, SMALL)),
    ...heads.map((line) => MARGIN + textWidth(line, HEAD, true)),
  ];
  return { box: { minX: 0, minY: 0, maxX: Math.max(...wide) + MARGIN, maxY: y - 1 + MARGIN }, items };
}

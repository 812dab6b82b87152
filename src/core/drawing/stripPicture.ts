import { straightContour } from "../geometry/contourShapes.ts";
import { ringBox } from "../geometry/ring.ts";
import type { CutPiece, PieceLine } from "../materials/cutPiece.ts";
import type { StrapWords } from "../straps/words/strapWords.ts";
import { lengthLabel, levelDimension } from "./dimensionLine.ts";
import type { Drawing, DrawingItem } from "./drawing.ts";
import { drawArea, drawLine, drawText } from "./items.ts";
import { textWidth } from "./textWidth.ts";

const TEXT = 3;
const MARGIN = 6;
/** How much of the strip is drawn, mm on the page; the rest is broken out. */
const SHOWN = 110;
/** Height of the strip on the page at most, mm: a picture among others on a cut sheet. */
const TALL = 45;
const BREAK = 2;
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

/** Strip with its far part broken out: a long thing drawn short. */
function brokenOutline(x0: number, x1: number, y0: number, y1: number): number[] {
  const steps = 6;
  const points = [x0, y0, x1, y0];
  for (let i = 1; i < steps; i++) points.push(x1 + (i % 2 === 1 ? BREAK : -BREAK), y0 + ((y1 - y0) * i) / steps);
  return [...points, x1, y1, x0, y1];
}

/**
 * A strip laid flat, wrong side up, with its fold, tape, stitch and trim lines and how far each lies from the lower
 * edge in both units. Its width is to a scale that is named; its length is broken off. Drawing mm.
 */
export function stripPicture(piece: CutPiece, { lineAt, picture }: StrapWords): Drawing {
  const box = ringBox(piece.outline.outer);
  const width = box.maxY;
  const scale = Math.min(1, TALL / width);
  const lines = levelLines(piece);
  const cut = picture.cutWidth(lengthLabel(width));
  const x0 = MARGIN + textWidth(cut, TEXT) + 7;
  const x1 = x0 + SHOWN;
  const y0 = MARGIN + 12;
  const y1 = y0 + width * scale;
  const outline = straightContour(brokenOutline(x0, x1, y0, y1), true);
  const items: DrawingItem[] = [drawArea("back", [outline]), drawLine("cut", outline)];
  const labels = lines.map(({ y, line }) => lineAt(line.note ?? line.role, lengthLabel(y)));
  const heights = spreadHeights(
    lines.map(({ y }) => y0 + y * scale),
    TEXT * SPREAD,
  );
  lines.forEach(({ y, line }, i) => {
    const at = y0 + y * scale;
    items.push(drawLine(line.role, straightContour([x0, at, x1 - BREAK, at])));
    items.push(
      drawLine("label", straightContour([x1 + BREAK + 0.5, at, x1 + 8, heights[i]!, x1 + 10, heights[i]!])),
    );
    items.push(drawText(labels[i]!, x1 + 11, heights[i]! - TEXT * 0.35, TEXT));
  });
  items.push(...levelDimension(x0, x1, y0 - 1, MARGIN + 4, picture.cutLength(lengthLabel(box.maxX)), TEXT));
  items.push(
    drawLine("label", straightContour([x0 - 3, y0, x0 - 3, y1])),
    drawLine("label", straightContour([x0 - 4, y0, x0 - 1, y0])),
    drawLine("label", straightContour([x0 - 4, y1, x0 - 1, y1])),
    drawText(cut, MARGIN, (y0 + y1) / 2 - TEXT * 0.35, TEXT),
  );
  const top = Math.max(y1, (heights.at(-1) ?? y1) + TEXT);
  items.push(drawText(piece.name, x0, top + 9, 4, { bold: true }));
  items.push(drawText(picture.flat(scale === 1 ? null : Math.round(scale * 100)), x0, top + 4.5, 2.8));
  const right = x1 + 11 + Math.max(0, ...labels.map((text) => textWidth(text, TEXT)));
  const title = x0 + textWidth(piece.name, 4, true);
  return { box: { minX: 0, minY: 0, maxX: Math.max(right, title) + MARGIN, maxY: top + 9 + 4 + MARGIN }, items };
}

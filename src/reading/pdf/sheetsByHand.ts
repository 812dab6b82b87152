import { shift } from "../../core/geometry/affine.ts";
import { type Box, boxHolds } from "../../core/geometry/box.ts";
import { type Curve, mapCurve } from "../../core/patterns/curve.ts";
import { curveBox, flattenCurve } from "../../core/patterns/measureCurve.ts";
import type { PatternLine, PatternMark } from "../../core/patterns/patternDrawing.ts";
import type { ReadPage } from "./readPage.ts";

/** Sheets in rows from the top, each trimmed by the same border all round, mm. */
export interface SheetsByHand {
  readonly columns: number;
  readonly rows: number;
  readonly trim: number;
}

/** Chords of a line that is cut at the edge of its sheet, mm. */
const CHORD = 0.005;

/**
 * The sheets laid edge to edge, row after row from the top left; what lies outside of a sheet's trimmed part is left
 * out, so that a line which goes on over the edge meets its other half there.
 */
export function laidByHand(
  pages: readonly ReadPage[],
  { columns, rows, trim }: SheetsByHand,
): { readonly lines: readonly PatternLine[]; readonly marks: readonly PatternMark[] } {
  const lines: PatternLine[] = [];
  const marks: PatternMark[] = [];
  for (const [i, page] of pages.slice(0, columns * rows).entries()) {
    const { maxX, maxY } = page.frame.box;
    const cell = { minX: trim, minY: trim, maxX: maxX - trim, maxY: maxY - trim };
    const x = (i % columns) * (cell.maxX - cell.minX) - trim;
    const y = (rows - 1 - Math.floor(i / columns)) * (cell.maxY - cell.minY) - trim;
    for (const line of page.lines)
      for (const curve of insideOf(line.curve, cell)) lines.push({ ...line, curve: mapCurve(curve, shift(x, y)) });
    for (const { text, ...at } of page.texts)
      marks.push({ kind: "text", x: at.x + x, y: at.y + y, text, layer: "" });
  }
  return { lines, marks };
}

/** The runs of a curve inside a box; the curve itself when it does not leave it. */
function insideOf(curve: Curve, cell: Box): readonly Curve[] {
  const box = curveBox(curve);
  const slack = 1e-6;
  if (boxHolds(cell, box, slack)) return [curve];
  const points = flattenCurve(curve, CHORD);
  if (curve.closed) points.push(points[0]!, points[1]!);
  const runs: number[][] = [];
  let open: number[] | null = null;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const cut = clipped(points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!, cell);
    if (cut === null) {
      open = null;
      continue;
    }
    const [x0, y0, x1, y1] = cut;
    if (open === null || open.at(-2) !== x0 || open.at(-1) !== y0) {
      open = [x0, y0];
      runs.push(open);
    }
    open.push(x1, y1);
  }
  return runs.map((run): Curve => {
    const parts = [];
    for (let i = 2; i < run.length; i += 2) parts.push({ kind: "straight" as const, x: run[i]!, y: run[i + 1]! });
    return { x: run[0]!, y: run[1]!, parts, closed: false };
  });
}

/** A segment's part in a box, or null. Source: Liang & Barsky 1984, ACM Transactions on Graphics 3(1). */
function clipped(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  box: Box,
): [number, number, number, number] | null {
  let from = 0;
  let to = 1;
  const dx = x1 - x0;
  const dy = y1 - y0;
  for (const [p, q] of [
    [-dx, x0 - box.minX],
    [dx, box.maxX - x0],
    [-dy, y0 - box.minY],
    [dy, box.maxY - y0],
  ] as const) {
    if (p === 0) {
      if (q < 0) return null;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
  }
  if (from > to || (from === to && dx * dx + dy * dy > 0)) return null;
  return [
    from === 0 ? x0 : x0 + from * dx,
    from === 0 ? y0 : y0 + from * dy,
    to === 1 ? x1 : x0 + to * dx,
    to === 1 ? y1 : y0 + to * dy,
  ];
}

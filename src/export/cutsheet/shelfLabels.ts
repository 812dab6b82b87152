import type { Offcut } from "../../core/buying/offcuts.ts";
import type { CupboardPiece } from "../../core/cupboard/cupboard.ts";
import { contourBox } from "../../core/geometry/contourArcs.ts";
import { shapeContour } from "../../core/geometry/shape.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { PAPER_TEXTS } from "../../core/words/words.ts";
import type { ShelfLabel } from "./shelfLabelPages.ts";

/** How lengths are written, and in which language. */
export interface Telling {
  readonly lengths: LengthStyle;
  readonly language: Language;
}

/** What the label of a piece of the cupboard says, below its code. */
export function shelfLabel(piece: CupboardPiece, telling: Telling): ShelfLabel {
  const { code, largest, strip } = piece;
  const lines = [
    piece.material,
    ...(piece.shade === null ? [] : [piece.shade]),
    piece.stock.kind === "remnant" ? boxText(piece, telling) : sizeText(piece, telling),
    ...(largest === null || piece.stock.kind === "roll" ? [] : [`□ ${freeText(largest, telling)}`]),
    ...(strip === null || piece.stock.kind === "roll" ? [] : [`↔ ${freeText(strip, telling)}`]),
    [piece.kept, piece.source].filter((text) => text !== null).join(", "),
  ];
  return { code, lines };
}

/** Kind and box of a piece, along the grain first. */
export function sizeText(piece: CupboardPiece, telling: Telling): string {
  return `${PAPER_TEXTS[telling.language].stocks.kinds[piece.stock.kind]} ${boxText(piece, telling)}`;
}

/** Box of a piece, along the grain first. */
function boxText({ stock }: CupboardPiece, telling: Telling): string {
  if (stock.kind === "roll") return sidesText(stock.length ?? 0, stock.width, telling);
  const { minX, minY, maxX, maxY } = contourBox(shapeContour(stock.shape));
  return sidesText(maxX - minX, maxY - minY, telling);
}

/** A free rectangle, along the grain first. */
export function freeText(free: Offcut | null, telling: Telling): string {
  return free === null ? "–" : sidesText(free.along, free.across, telling);
}

/** Two sides with one unit; whole millimetres, rounded down: nothing is promised that is not there. */
function sidesText(along: number, across: number, { lengths, language }: Telling): string {
  const isMetric = !lengths.startsWith("in") && !lengths.startsWith("yd");
  const write = (mm: number): string => formatLength(isMetric ? Math.floor(mm + 0.01) : mm, lengths, language);
  const [first, second] = [write(along), write(across)];
  const unit = second.slice(second.search(/[^\d.,]/u));
  return isMetric && first.endsWith(unit)
    ? `${first.slice(0, first.length - unit.length)} × ${second}`
    : `${first} × ${second}`;
}

import { contourBox } from "../../geometry/contourArcs.ts";
import type { CutPiece } from "../../materials/cutPiece.ts";
import { mirrorImage } from "../../materials/mirrorImage.ts";
import { cutLength } from "../../units/cutLength.ts";
import type { LengthStyle } from "../../units/formatLength.ts";
import type { Language } from "../../units/language.ts";
import { PAPER_TEXTS } from "../../words/words.ts";
import type { PieceArt } from "./layDrawing.ts";

/** What is drawn of each piece of a cut list, by the id it is laid under; mirror images are pieces of their own. */
export function pieceArt(
  pieces: readonly CutPiece[],
  lengths: LengthStyle,
  language: Language = "en",
): Map<string, PieceArt> {
  const texts = PAPER_TEXTS[language].pieces;
  const art = new Map<string, PieceArt>();
  for (const piece of pieces) {
    const mirrored = mirrorImage(piece);
    if (piece.count > 0) art.set(piece.id, artOf(piece, piece.name, lengths, language));
    if (mirrored) art.set(mirrored.id, artOf(mirrored, texts.mirrored(piece.name), lengths, language));
  }
  return art;
}

function artOf(piece: CutPiece, name: string, lengths: LengthStyle, language: Language): PieceArt {
  const box = contourBox(piece.contour);
  const along = cutLength(box.maxX - box.minX, lengths, language);
  const across = cutLength(box.maxY - box.minY, lengths, language);
  return {
    name,
    detail: `${along} × ${across}`,
    contour: piece.contour,
    outline: piece.outline,
    lines: piece.lines,
    count: piece.count,
  };
}

import type { Contour } from "../../geometry/contour.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { ringContour } from "../../geometry/contourShapes.ts";
import { fewerCorners } from "../../geometry/fewerCorners.ts";
import type { Polygon } from "../../geometry/ring.ts";
import type { CutPiece } from "../../materials/cutPiece.ts";
import { laidForms } from "../../materials/laidForms.ts";
import type { Material } from "../../materials/material.ts";
import { cutLength } from "../../units/cutLength.ts";
import type { LengthStyle } from "../../units/formatLength.ts";
import type { Language } from "../../units/language.ts";
import { PAPER_TEXTS } from "../../words/words.ts";
import type { GrainArrow } from "./labelBlock.ts";
import type { PieceArt } from "./layDrawing.ts";

/** What is drawn of each piece of a cut list, by the id it is laid under; mirror images and halves are pieces of their own. */
export function pieceArt(
  pieces: readonly CutPiece[],
  lengths: LengthStyle,
  language: Language = "en",
): Map<string, PieceArt> {
  const texts = PAPER_TEXTS[language].pieces;
  const art = new Map<string, PieceArt>();
  for (const piece of pieces) {
    const names = {
      "as-drawn": piece.name,
      mirrored: texts.mirrored(piece.name),
      half: texts.onFold(piece.name),
    };
    for (const { piece: laid, form } of laidForms(piece))
      art.set(laid.id, artOf(laid, names[form], lengths, language));
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
    contour: drawn(piece.contour),
    outline: drawnOutline(piece.outline),
    lines: piece.lines.map((line) => ({ ...line, contour: drawn(line.contour) })),
    // Of several layers come more pieces than are laid: which one of how many is nothing a copy can say.
    count: piece.spread === undefined ? piece.count : 1,
    ...(piece.foldEdge === true ? { cutLine: { ...drawn(piece.contour), closed: false } } : {}),
  };
}

/** Lines with no more corners than this are drawn with all of them. */
const MANY_CORNERS = 400;
/** How near to the straight a corner is that need not be drawn, mm: half of what the lay itself leaves to curves. */
const UNSEEN = 0.005;

/** A line as it is drawn. One of thousands of corners, a hundred times over, is more than a printer or machine takes. */
function drawn(contour: Contour): Contour {
  return contour.vertices.length > 3 * MANY_CORNERS ? fewerCorners(contour, UNSEEN) : contour;
}

function drawnOutline({ outer, holes }: Polygon): Polygon {
  const ring = (points: Float64Array): Float64Array =>
    points.length > 2 * MANY_CORNERS
      ? fewerCorners(ringContour(points), UNSEEN).vertices.filter((_, i) => i % 3 !== 2)
      : points;
  return { outer: ring(outer), holes: holes.map(ring) };
}

/** One head when the cloth is one-way, none when its direction does not matter. */
export function grainArrow(material: Material): GrainArrow {
  if (material.oneWay !== false) return "one-way";
  return material.grain === "free" ? "none" : "both";
}

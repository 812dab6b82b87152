import { grainArrow, pieceArt } from "../core/drawing/lay/pieceArt.ts";
import type { Pattern } from "../core/drawing/sheets/patternSheet.ts";
import type { LayProblem } from "../core/lay/problem/layProblem.ts";
import { type CutPiece, isCutBySize } from "../core/materials/cutPiece.ts";
import type { Material } from "../core/materials/material.ts";
import { mirrorImageId } from "../core/materials/mirrorImage.ts";
import type { LengthStyle } from "../core/units/formatLength.ts";
import type { Language } from "../core/units/language.ts";
import { PAPER_TEXTS } from "../core/words/words.ts";

/** A material and how its pieces may lie. */
interface PatternCloth {
  readonly material: Material;
  readonly problem: LayProblem;
  readonly singly?: LayProblem | undefined;
}

/**
 * One pattern for each piece that is no rectangle, lying as it does on its cloth; rectangles are cut by size. Mirror
 * images are the same paper turned over, and said so.
 */
export function patternsOf(
  clothes: readonly PatternCloth[],
  pieces: readonly CutPiece[],
  lengths: LengthStyle,
  language: Language,
): Pattern[] {
  const art = pieceArt(pieces, lengths, language);
  const texts = PAPER_TEXTS[language].pieces;
  return clothes.flatMap(({ material, problem, singly }) =>
    pieces.flatMap((piece): Pattern[] => {
      if (piece.materialId !== material.id || isCutBySize(piece.outline)) return [];
      const id = piece.count > 0 ? piece.id : mirrorImageId(piece.id);
      const laid = (singly ?? problem).pieces.find((one) => one.id === id);
      const drawn = art.get(id);
      if (!laid || !drawn) return [];
      const turned = piece.count > 0 ? piece.mirroredCount : 0;
      const detail = texts.pattern(piece.count > 0 ? piece.count : piece.mirroredCount, turned, material.name);
      return [
        {
          id,
          art: { ...drawn, count: 1, detail },
          orientation: laid.orientations[0]!,
          grain: grainArrow(material),
        },
      ];
    }),
  );
}

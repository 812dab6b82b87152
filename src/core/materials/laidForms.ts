import type { CutPiece } from "./cutPiece.ts";
import { type FoldWay, foldHalf } from "./foldHalf.ts";
import { mirrorImage } from "./mirrorImage.ts";

/** A piece of the cut list in a form in which it is laid, and what makes it that form. */
export interface LaidForm {
  readonly piece: CutPiece;
  readonly form: "as-drawn" | "mirrored" | "half";
}

const WAYS: readonly FoldWay[] = ["along", "across"];

/**
 * Every form of a piece that a lay may name: as drawn, its mirror image, and, where its cloth is folded, half of it on
 * the fold. Their ids are those of the lay.
 */
export function laidForms(piece: CutPiece): LaidForm[] {
  const mirrored = mirrorImage(piece);
  const onFold = piece.spread === "folded" ? WAYS.flatMap((way) => foldHalf(piece, way) ?? []) : [];
  return [
    // Of several layers, mirror images may come of the piece as drawn, even where they alone are asked for.
    ...(piece.count > 0 || piece.spread !== undefined ? [{ piece, form: "as-drawn" } as const] : []),
    ...(mirrored ? [{ piece: mirrored, form: "mirrored" } as const] : []),
    ...onFold.map((half) => ({ piece: half, form: "half" }) as const),
  ];
}

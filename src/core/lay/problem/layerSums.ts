import type { AskedPiece, LayPlan, LayProblem } from "./layProblem.ts";

/** Pieces that come of the layers besides those asked for, by piece and hand; pieces with none are not in it. */
export function spareOf({ pieces, spread }: LayProblem, { placements }: LayPlan): AskedPiece[] {
  if (spread === undefined) return [];
  const laid = new Map<string, number>();
  for (const { pieceId } of placements) laid.set(pieceId, (laid.get(pieceId) ?? 0) + 1);
  return spread.asked.flatMap(({ pieceId, ...asked }): AskedPiece[] => {
    const gives = pieces.flatMap((piece) =>
      piece.gives?.of === pieceId ? [{ ...piece.gives, copies: laid.get(piece.id) ?? 0 }] : [],
    );
    const sum = (hand: "asDrawn" | "mirrored"): number =>
      Math.max(0, gives.reduce((all, give) => all + give.copies * give[hand], 0) - asked[hand]);
    const spare = { pieceId, asDrawn: sum("asDrawn"), mirrored: sum("mirrored") };
    return spare.asDrawn + spare.mirrored > 0 ? [spare] : [];
  });
}

/** Pieces that come of `copies` copies of a piece on all layers together. */
export function piecesOf({ pieces }: LayProblem, pieceId: string, copies: number): number {
  const gives = pieces.find(({ id }) => id === pieceId)?.gives;
  return gives === undefined ? copies : copies * (gives.asDrawn + gives.mirrored);
}

import { isCutBySize } from "../../materials/cutPiece.ts";
import type { LaySheet, PieceArt } from "../lay/layDrawing.ts";
import type { Drawing } from "../list/drawing.ts";

/** What of a lay is worth paper. */
export interface CurvedSheet {
  /** The lay without its rectangles. */
  readonly sheet: LaySheet;
  /** Name, size and number of the rectangles that are cut by size instead, one line a kind. */
  readonly bySize: readonly string[];
}

/** The curved pieces of a lay where they lie; rectangles are listed by size. */
export function curvedSheet(sheet: LaySheet, art: ReadonlyMap<string, PieceArt>): CurvedSheet {
  const square = sheet.copies.filter(({ outline }) => isCutBySize(outline));
  const keys = new Set(square.map(({ key }) => key));
  const counts = new Map<string, number>();
  for (const { pieceId } of square) counts.set(pieceId, (counts.get(pieceId) ?? 0) + 1);
  return {
    sheet: {
      stockId: sheet.stockId,
      usedLength: sheet.usedLength,
      get drawing(): Drawing {
        const { box, items } = sheet.drawing;
        return { box, items: items.filter(({ owner }) => owner === undefined || !keys.has(owner)) };
      },
      copies: sheet.copies.filter(({ key }) => !keys.has(key)),
    },
    bySize: [...counts].map(([id, count]) => {
      const piece = art.get(id)!;
      return `${count} × ${piece.name}: ${piece.detail}`;
    }),
  };
}

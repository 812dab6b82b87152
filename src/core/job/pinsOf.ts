import type { LayPiece, Stock, StockPlacement } from "../lay/problem/layProblem.ts";
import type { Project } from "../project/project.ts";

/** The pins of a material as the lay takes them; those of a piece, copy or stock that is not there are left out. */
export function pinsOf(
  project: Project,
  materialId: string,
  pieces: readonly LayPiece[],
  stocks: readonly Stock[],
): StockPlacement[] {
  const counts = new Map(pieces.map((piece) => [piece.id, piece.count]));
  const stockIds = new Set(stocks.map((stock) => stock.id));
  return project.pins
    .filter((pin) => pin.materialId === materialId)
    .filter((pin) => stockIds.has(pin.stockId) && pin.copy < (counts.get(pin.pieceId) ?? 0))
    .map(({ materialId: _, ...pin }) => pin);
}

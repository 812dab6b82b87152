import type { LayPiece, Stock, StockPlacement } from "../lay/problem/layProblem.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import { type AllowedTurns, allowedTurns } from "../materials/orientations.ts";
import type { Project } from "../project/project.ts";

/** The turns of a piece on its material. RangeError where they contradict each other: the cut list has told that. */
export function turnsOf(piece: CutPiece, material: Material): AllowedTurns {
  const turns = allowedTurns(piece.grain, material);
  if (turns === null)
    throw new RangeError(`turnsOf: piece ${piece.id} is ${piece.grain}, material ${material.id} ${material.grain}`);
  return turns;
}

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

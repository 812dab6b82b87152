import type { CutPiece } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import { type AllowedTurns, allowedTurns } from "../materials/orientations.ts";

/** The turns of a piece on its material. RangeError where they contradict each other: the cut list has told that. */
export function turnsOf(piece: CutPiece, material: Material): AllowedTurns {
  const turns = allowedTurns(piece.grain, material);
  if (turns === null)
    throw new RangeError(`turnsOf: piece ${piece.id} is ${piece.grain}, material ${material.id} ${material.grain}`);
  return turns;
}
